#include "weighing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "belief.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// If the effective number of days is below this fraction of them, they are sampled again (ours).
constexpr double worth_enough = 0.4;
/// Samples are drawn from a belief widened by this much, so that their weights stay bounded (ours).
constexpr double widening = 1.1;
/// Limit on repeated sampling; each time the belief is fitted to the previous days (ours).
constexpr int max_resamplings = 3;

/// A set of days with the events of each.
struct SolvedDays {
  std::vector<UncertainInputs> uncertain_inputs;
  std::vector<Sample> samples;
  std::vector<DayEvents> events;
};

SolvedDays solve(const DayModel& model, std::vector<UncertainInputs> uncertain_inputs,
                 const EnsembleSettings& settings) {
  SolvedDays days;
  days.events = solve_days(model, uncertain_inputs, settings);
  for (const UncertainInputs& one : uncertain_inputs) days.samples.push_back(model.sample(one));
  days.uncertain_inputs = std::move(uncertain_inputs);
  return days;
}

/// The order in which events happen at one place; 0 if it is not fixed.
int rank_of(ObservationKind kind) {
  constexpr std::array order{ObservationKind::placed,      ObservationKind::edge_held,
                             ObservationKind::thumbprint,  ObservationKind::print_firm,
                             ObservationKind::initial_set, ObservationKind::sawed};
  const auto found = std::find(order.begin(), order.end(), kind);
  return found == order.end() ? 0 : static_cast<int>(found - order.begin()) + 1;
}

std::string sighting_words(const Sighting& sighting) {
  const std::string& place = sighting.place_words;
  return place.empty() ? std::string(observation_words(sighting.kind))
                       : fmt::format("{} ({})", observation_words(sighting.kind), place);
}

/// Removes observations that cannot be right and keeps the others.
class Sifting {
 public:
  Sifting(const DayModel& model, const PourRun& run, const ObservationRules& rules)
      : model_(model), run_(run), rules_(rules) {}

  void sift(const std::vector<Sighting>& sightings, const SolvedDays& days) {
    std::vector<bool> out(sightings.size(), false);
    for (std::size_t i = 0; i < sightings.size(); ++i) {
      if (too_far_apart(sightings[i])) out[i] = true;
      for (std::size_t j = 0; j < i; ++j) {
        if (out_of_order(sightings[j], sightings[i])) out[i] = out[j] = true;
      }
    }
    for (std::size_t i = 0; i < sightings.size(); ++i) {
      if (!out[i] && believable(sightings[i], days)) counted.push_back(sightings[i]);
    }
  }

  /// The belief after all observations that count, using lines fitted to these days.
  Belief belief(const SolvedDays& days) const {
    Belief belief;
    for (const Sighting& one : counted) {
      if (one.by_then) continue;
      belief.see(line(one, days), one.mean_value(), one.mean_variance());
    }
    return belief;
  }

  std::vector<double> log_chances(const SolvedDays& days) const {
    std::vector<double> sums(days.uncertain_inputs.size(), 0.0);
    for (std::size_t i = 0; i < sums.size(); ++i) {
      for (const Sighting& one : counted) {
        sums[i] +=
            log_chance(one, expected_values(one, days.samples[i], days.events[i], model_, run_));
      }
    }
    return sums;
  }

  std::vector<Sighting> counted;
  std::vector<Misfit> misfits;

 private:
  Belief::Line line(const Sighting& sighting, const SolvedDays& days) const {
    std::vector<double> figures;
    for (std::size_t i = 0; i < days.uncertain_inputs.size(); ++i) {
      const auto all = expected_values(sighting, days.samples[i], days.events[i], model_, run_);
      double sum = 0.0;
      for (const double one : all) sum += one;
      figures.push_back(sum / static_cast<double>(all.size()));
    }
    return fit_line(days.uncertain_inputs, figures);
  }

  void leave_out(std::vector<std::size_t> readings, std::string why) {
    misfits.push_back({std::move(readings), std::move(why)});
  }

  /// An event has only one time; two noted times that are far apart cannot both be right.
  bool too_far_apart(const Sighting& sighting) {
    if (rank_of(sighting.kind) == 0 && sighting.kind != ObservationKind::sheen_gone) return false;
    if (sighting.by_then) return false;
    const auto [first, last] = std::minmax_element(sighting.values.begin(), sighting.values.end());
    const double max = rules_.unbelievable_z * std::sqrt(2.0 * sighting.variance);
    if (*last - *first <= max) return false;
    leave_out(sighting.readings,
              fmt::format("{} is noted at times {:.0f} min apart: it happens only once, so none "
                          "of them counts; undo the wrong one",
                          sighting_words(sighting), (*last - *first) / seconds_per_minute));
    return true;
  }

  bool out_of_order(const Sighting& a, const Sighting& b) {
    if (a.place != b.place) return false;
    const bool a_first = rank_of(a.kind) < rank_of(b.kind);
    const Sighting& before = a_first ? a : b;
    const Sighting& after = a_first ? b : a;
    if (rank_of(before.kind) == 0 || rank_of(before.kind) == rank_of(after.kind)) return false;
    if (before.mean_value() <= after.mean_value()) return false;
    std::vector<std::size_t> both = before.readings;
    both.insert(both.end(), after.readings.begin(), after.readings.end());
    leave_out(std::move(both),
              fmt::format("{} cannot come after {}: neither counts; undo the wrong one",
                          sighting_words(before), observation_words(after.kind)));
    return true;
  }

  /// Not too far from what is expected, both before anything was observed and after the earlier
  /// observations.
  bool believable(const Sighting& sighting, const SolvedDays& days) {
    const Belief::Line shown = line(sighting, days);
    const double at_first = deviations(Belief(), shown, sighting);
    if (!(at_first <= rules_.unbelievable_z)) {
      leave_out(sighting.readings,
                fmt::format("{} is further off than on any day the plan allows for: it does "
                            "not count; look again, or check the mix and the weather",
                            sighting_words(sighting)));
      return false;
    }
    if (!(deviations(seen_, shown, sighting) <= rules_.unbelievable_z)) {
      leave_out(sighting.readings,
                fmt::format("{} does not fit what was noted before it: it does not count; look "
                            "again, or undo the wrong one",
                            sighting_words(sighting)));
      return false;
    }
    if (!sighting.by_then) seen_.see(shown, sighting.mean_value(), sighting.mean_variance());
    return true;
  }

  static double deviations(const Belief& belief, const Belief::Line& line,
                           const Sighting& sighting) {
    const Belief::Expected expected = belief.expect(line);
    const double off = sighting.mean_value() - expected.mean;
    if (sighting.by_then && off > 0.0) return 0.0;
    return std::abs(off) / std::sqrt(expected.variance + sighting.mean_variance());
  }

  const DayModel& model_;
  const PourRun& run_;
  const ObservationRules& rules_;
  Belief seen_;
};

/// Weights with sum 1 from their logarithms; equal weights if those are not finite.
std::vector<double> weights_of(const std::vector<double>& logs) {
  const double max = *std::max_element(logs.begin(), logs.end());
  std::vector<double> weights;
  double sum = 0.0;
  for (const double log_likelihood : logs) {
    const double weight = std::exp(log_likelihood - max);
    weights.push_back(std::isfinite(weight) ? weight : 0.0);
    sum += weights.back();
  }
  for (double& weight : weights) {
    weight = sum > 0.0 ? weight / sum : 1.0 / static_cast<double>(logs.size());
  }
  return weights;
}

double worth(const std::vector<double>& weights) {
  double squares = 0.0;
  for (const double weight : weights) squares += weight * weight;
  return squares > 0.0 ? 1.0 / squares : 0.0;
}

/// Logarithm of the day's own density divided by that with which it is drawn from the widened
/// belief.
double log_correction(const UncertainInputs& uncertain_inputs, const Belief& belief) {
  double square = 0.0;
  for (const double z : uncertain_inputs.z) square += z * z;
  return -0.5 * square - belief.log_density(uncertain_inputs, widening);
}

/// Days sampled around the belief, and their weights.
struct Resampled {
  SolvedDays days;
  std::vector<double> weights;
};

Resampled resample(const Belief& belief, const Sifting& sifting, const DayModel& model,
                   const EnsembleSettings& settings) {
  std::vector<UncertainInputs> uncertain_inputs = even_uncertain_inputs(settings.samples);
  for (UncertainInputs& one : uncertain_inputs) one = belief.moved(one, widening);
  Resampled resampled{solve(model, std::move(uncertain_inputs), settings), {}};
  std::vector<double> logs = sifting.log_chances(resampled.days);
  for (std::size_t i = 0; i < logs.size(); ++i) {
    logs[i] += log_correction(resampled.days.uncertain_inputs[i], belief);
  }
  resampled.weights = weights_of(logs);
  return resampled;
}

}  // namespace

UncertainInputs WeighedDays::mean() const {
  UncertainInputs mean;
  for (std::size_t i = 0; i < uncertain_inputs.size(); ++i) {
    for (std::size_t k = 0; k < uncertain_input_count; ++k)
      mean.z[k] += weights[i] * uncertain_inputs[i].z[k];
  }
  const double by_chance = 1.0 / std::sqrt(worth(weights));
  for (double& z : mean.z) {
    if (std::abs(z) < by_chance) z = 0.0;
  }
  return mean;
}

WeighedDays weigh_days(const DayModel& model, const PourRun& run,
                       const std::vector<Sighting>& sightings, const ObservationRules& rules,
                       const EnsembleSettings& settings) {
  WeighedDays weighed;
  if (settings.samples == 0) return weighed;
  SolvedDays days = solve(model, even_uncertain_inputs(settings.samples), settings);
  Sifting sifting(model, run, rules);
  sifting.sift(sightings, days);
  weighed.weights = weights_of(sifting.log_chances(days));
  const double enough = worth_enough * static_cast<double>(settings.samples);
  for (int round = 0; round < max_resamplings && worth(weighed.weights) < enough; ++round) {
    Resampled resampled = resample(sifting.belief(days), sifting, model, settings);
    if (worth(resampled.weights) <= worth(weighed.weights)) break;
    days = std::move(resampled.days);
    weighed.weights = std::move(resampled.weights);
    weighed.moved = true;
  }
  weighed.effective_days = worth(weighed.weights);
  weighed.uncertain_inputs = std::move(days.uncertain_inputs);
  weighed.counted = std::move(sifting.counted);
  weighed.misfits = std::move(sifting.misfits);
  return weighed;
}

}  // namespace slabtide
