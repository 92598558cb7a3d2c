#include "slabtide/slab/stress/stress.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <stdexcept>

#include "curl.h"
#include "slab/process/setting.h"
#include "slab/process/strength.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double curl_fraction = 0.5;  // of E alpha dG: a straight gradient, fully restrained
constexpr double concrete_n_m3 = 2350.0 * 9.80665;
constexpr double friction = 1.5;        // granular base; AASHTO 0.9 to 1.8, published
constexpr double tied_restraint = 0.8;  // of E alpha dT
// What is left of a stress after so long under an unchanged strain: 0.63 + 0.15 exp(-t/12 h) +
// 0.22 exp(-t/1 h). Fitted within 0.02 from one hour to a day to 1/(1 + 0.8 phi), phi the creep of
// CEB-FIP Model Code 1990 for concrete loaded at a third of a day (both from memory).
constexpr double lasting = 0.63;
constexpr std::array<double, 2> fading{0.15, 0.22};
constexpr std::array<double, 2> fades_in_h{12.0, 1.0};
constexpr double corner_factor = 1.5;  // re-entrant corner: ours

std::optional<std::size_t> at_final_set(const ColumnHistory& history) {
  const auto& psi = history.resistance_middle_psi;
  const auto set =
      std::find_if(psi.begin(), psi.end(), [](double p) { return p >= final_set_psi; });
  if (set == psi.end()) return std::nullopt;
  return static_cast<std::size_t>(set - psi.begin());
}

double curl_coefficient_of(double modulus_psi, const StressCase& piece) {
  const double radius_m =
      relative_stiffness_radius_m(pa_from_psi(modulus_psi), piece.thickness_m, usual_subgrade_pa_m);
  return curl_coefficient(piece.uncut_length_m / radius_m);
}

/// What friction or the structure it is tied to can hold of the mean stress.
double max_held_psi(const StressCase& piece) {
  if (piece.tied) return std::numeric_limits<double>::infinity();
  return psi_from_pa(concrete_n_m3 * friction * piece.uncut_length_m / 2.0);
}

/// Tension at the face that has more of it; 0 if both are in compression.
double tension_psi(double mean, double curl_top) {
  return std::max({0.0, mean + curl_top, mean - curl_top});
}

/// How the fading parts of a stress are left over one step.
using Left = std::array<double, fading.size()>;

Left left_after(double step_s) {
  Left left{};
  for (std::size_t k = 0; k < left.size(); ++k)
    left[k] = std::exp(-step_s / (fades_in_h[k] * seconds_per_hour));
  return left;
}

/// A stress that grows by pieces, each of which relaxes from when it came, amid its step.
class RelaxingStress {
 public:
  double psi() const { return lasting_psi_ + fading_psi_[0] + fading_psi_[1]; }

  void grow(const Left& left, double added_psi) {
    lasting_psi_ += lasting * added_psi;
    for (std::size_t k = 0; k < left.size(); ++k)
      fading_psi_[k] = left[k] * fading_psi_[k] + std::sqrt(left[k]) * fading[k] * added_psi;
  }

  /// What is over the limit slips, and is gone.
  void slip(double max_psi) {
    const double size = std::abs(psi());
    if (!(size > max_psi)) return;
    const double kept = max_psi / size;
    lasting_psi_ *= kept;
    for (double& part : fading_psi_) part *= kept;
  }

 private:
  double lasting_psi_ = 0.0;
  Left fading_psi_{};
};

/// Stress over strength through a history, instant after instant from final set on.
class Ratios {
 public:
  Ratios(const ColumnHistory& history, std::size_t final_set, const MixModel& mix,
         const StressCase& piece)
      : history_(history),
        mix_(mix),
        piece_(piece),
        held_psi_(max_held_psi(piece)),
        at_(final_set),
        modulus_psi_(modulus_psi()) {}

  std::size_t index() const { return at_; }

  /// To the next instant.
  void move() {
    ++at_;
    const double step_s = history_.time_s[at_] - history_.time_s[at_ - 1];
    if (step_s != step_s_) left_ = left_after(step_s);
    step_s_ = step_s;
    const double before_psi = modulus_psi_;
    modulus_psi_ = modulus_psi();
    const double psi_per_k = 0.5 * (before_psi + modulus_psi_) * mix_.expansion_per_k;
    mean_.grow(left_, (piece_.tied ? tied_restraint : 1.0) * psi_per_k * fall_of(history_.mean_c));
    mean_.slip(held_psi_);
    curl_.grow(left_, curl_fraction * psi_per_k * fall_of(history_.gradient_c));
  }

  /// Concrete without stiffness has neither stress nor strength: 0.
  double now() const {
    return modulus_psi_ > 0.0 ? ratio(curl_coefficient_of(modulus_psi_, piece_)) : 0.0;
  }

  /// Never under `now`, and far quicker.
  double max_now() const { return ratio(largest_curl_coefficient); }

 private:
  double fall_of(const std::vector<double>& values_c) const {
    return values_c[at_ - 1] - values_c[at_];
  }

  double modulus_psi() const { return elastic_modulus_psi(history_.strength_psi[at_]); }

  double ratio(double coefficient) const {
    const double strength_psi = tensile_strength_psi(history_.strength_psi[at_]);
    if (!(strength_psi > 0.0)) return 0.0;
    const double corner = piece_.re_entrant_corner ? corner_factor : 1.0;
    return tension_psi(mean_.psi(), coefficient * curl_.psi()) * corner / strength_psi;
  }

  const ColumnHistory& history_;
  const MixModel& mix_;
  const StressCase& piece_;
  double held_psi_;
  std::size_t at_;
  double modulus_psi_;
  RelaxingStress mean_;  ///< over the whole depth; tension where it cools
  RelaxingStress curl_;  ///< at the top, the other way at the bottom; times the coefficient
  Left left_{};
  double step_s_ = 0.0;
};

void check(const StressCase& piece) {
  if (!(piece.uncut_length_m > 0.0 && piece.thickness_m > 0.0))
    throw std::invalid_argument("stress: the uncut piece has no length or no thickness");
}

}  // namespace

std::vector<double> stress_ratio(const ColumnHistory& history, const MixModel& mix,
                                 const StressCase& piece) {
  check(piece);
  std::vector<double> ratio(history.time_s.size(), 0.0);
  const std::optional<std::size_t> set = at_final_set(history);
  if (!set) return ratio;
  Ratios ratios(history, *set, mix, piece);
  while (ratios.index() + 1 < ratio.size()) {
    ratios.move();
    ratio[ratios.index()] = ratios.now();
  }
  return ratio;
}

std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level) {
  check(piece);
  const std::optional<std::size_t> set = at_final_set(history);
  if (!set) return std::nullopt;
  Ratios ratios(history, *set, mix, piece);
  while (ratios.index() + 1 < history.time_s.size()) {
    const Ratios last = ratios;
    ratios.move();
    if (ratios.max_now() < level) continue;
    const double ratio = ratios.now();
    if (ratio < level) continue;
    const std::size_t i = ratios.index();
    const double before = last.now();
    if (!(ratio > before)) return history.time_s[i];
    const double fraction = (level - before) / (ratio - before);
    return history.time_s[i - 1] + fraction * (history.time_s[i] - history.time_s[i - 1]);
  }
  return std::nullopt;
}

}  // namespace slabtide
