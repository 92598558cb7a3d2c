#include "doubt.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "core/rounded.h"

namespace slabtide {

namespace {

using Values = std::vector<double>;

double mean_of(const Values& values, const Values& weights) {
  return std::inner_product(values.begin(), values.end(), weights.begin(), 0.0);
}

/// Squared correlation; 0 if either does not vary.
double shared_variance(const Values& a, const Values& b, const Values& weights) {
  const double mean_a = mean_of(a, weights);
  const double mean_b = mean_of(b, weights);
  double aa = 0.0;
  double bb = 0.0;
  double ab = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    aa += weights[i] * (a[i] - mean_a) * (a[i] - mean_a);
    bb += weights[i] * (b[i] - mean_b) * (b[i] - mean_b);
    ab += weights[i] * (a[i] - mean_a) * (b[i] - mean_b);
  }
  return aa > 0.0 && bb > 0.0 ? ab * ab / (aa * bb) : 0.0;
}

/// One main opening on every day; empty if it does not happen on some of them.
Values openings(const Ensemble& ensemble, std::size_t column, Operation operation) {
  Values values;
  for (const DayEvents& day : ensemble.days) {
    const auto& at_s = day[column].window(operation).opens_s;
    if (!at_s) return {};
    values.push_back(*at_s);
  }
  return values;
}

class DoubtShares {
 public:
  explicit DoubtShares(const Ensemble& ensemble) : ensemble_(ensemble) {}

  void add(const Values& times) {
    if (times.empty()) return;
    ++count_;
    for (std::size_t k = 0; k < uncertain_input_count; ++k) {
      Values z;
      for (const UncertainInputs& uncertain_inputs : ensemble_.uncertain_inputs)
        z.push_back(uncertain_inputs.z[k]);
      fractions_[k] += shared_variance(z, times, ensemble_.weights);
    }
  }

  std::vector<DoubtCause> causes() const {
    std::vector<DoubtCause> causes;
    for (std::size_t k = 0; k < uncertain_input_count; ++k) {
      causes.push_back({static_cast<UncertainInput>(k), count_ > 0 ? fractions_[k] / count_ : 0.0});
    }
    std::stable_sort(causes.begin(), causes.end(), [](const DoubtCause& a, const DoubtCause& b) {
      return rounded(a.fraction) > rounded(b.fraction);
    });
    return causes;
  }

 private:
  const Ensemble& ensemble_;
  std::array<double, uncertain_input_count> fractions_{};
  int count_ = 0;
};

/// Empty if one of the openings has no early or no late time.
std::optional<double> mean_width_min(const DayPlan& plan, const std::vector<Operation>& main_work) {
  double sum_min = 0.0;
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    const OperationWindow* window = plan.zones[i].whole.window(main_work[i]);
    if (window == nullptr || !window->opens_band) return std::nullopt;
    const auto minutes = band_minutes(*window->opens_band);
    if (!minutes) return std::nullopt;
    sum_min += *minutes;
  }
  return sum_min / static_cast<double>(plan.zones.size());
}

}  // namespace

Sureness sureness_of(const DayPlan& plan, const std::vector<Operation>& main_work,
                     const Ensemble& ensemble) {
  Sureness sureness;
  sureness.samples = ensemble.days.size();
  if (const auto width_min = mean_width_min(plan, main_work)) {
    sureness.either_way_min = 0.5 * *width_min;
  }
  DoubtShares fractions(ensemble);
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    fractions.add(openings(ensemble, ensemble.zones[i].whole.first, main_work[i]));
  }
  sureness.causes = fractions.causes();
  return sureness;
}

}  // namespace slabtide
