#include "slabtide/slab/stress/stress.h"

#include <algorithm>
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
// Creep (stress.h): strain of a stress held for a day beyond that of a quarter hour, and what of it
// comes in the first hour, fitted to B3 within 7 % from three hours to two days of age.
constexpr double creep_per_mpa = 128.9e-6;  // q2 of 310 kg/m3 of cement and 36 MPa
constexpr double creep_scale = 0.205;       // at an age of one day
constexpr float creep_exponent = -0.4F;
constexpr double creep_of_first_hour = 0.33;
constexpr double ageing_coefficient = 0.8;  // Trost and Bazant, from memory
// A relaxing stress is kept as what lasts and two parts that fade, which meet the formula after an
// hour and after a day and stay within 0.05 of it between.
constexpr double slow_fades_in_h = 8.0;
constexpr double fast_fades_in_h = 0.5;
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

/// What of a stress fades, and how fast.
struct Fading {
  double slow = 0.0;
  double fast = 0.0;
};

/// Of a stress that comes on concrete of this modulus, which set `since_set_h` of its `set_age_h`
/// ago. Concrete that has only just set keeps nothing.
Fading fading_of(double modulus_psi, double set_age_h, double since_set_h) {
  // Of the slow part after an hour, of both after a day.
  constexpr double slow_in_hour = 0.1175;
  constexpr double fast_in_hour = 0.8647;
  constexpr double slow_in_day = 0.9502;
  if (!(since_set_h > 0.0)) return {.slow = 0.0, .fast = 1.0};
  // In single precision, as the ages are: a third of the time.
  const float by_age = std::pow(static_cast<float>(set_age_h / hours_per_day), creep_exponent);
  const double creep = modulus_psi * pa_from_psi(1.0) / 1.0e6 * creep_per_mpa * creep_scale *
                       static_cast<double>(by_age) * set_age_h / since_set_h;
  const auto lost = [](double by_creep) {
    return 1.0 - 1.0 / (1.0 + ageing_coefficient * by_creep);
  };
  const double in_day = lost(creep);
  const double slow = std::max(0.0, (fast_in_hour * in_day - lost(creep_of_first_hour * creep)) /
                                        (fast_in_hour * slow_in_day - slow_in_hour));
  return {.slow = slow, .fast = in_day - slow_in_day * slow};
}

/// What is left of the two fading parts after a while.
Fading left_after(double s) {
  const auto left = [s](double fades_h) { return std::exp(-s / (fades_h * seconds_per_hour)); };
  return {.slow = left(slow_fades_in_h), .fast = left(fast_fades_in_h)};
}

/// What is left of what was there at a step's start, and of what came amid it.
struct StepLeft {
  explicit StepLeft(double step_s) : of_start(left_after(step_s)), amid(left_after(0.5 * step_s)) {}
  Fading of_start;
  Fading amid;
};

/// A stress that grows by pieces, each of which relaxes from when it came, amid its step.
class RelaxingStress {
 public:
  double psi() const { return lasting_psi_ + slow_psi_ + fast_psi_; }

  void grow(const StepLeft& left, const Fading& fading, double added_psi) {
    lasting_psi_ += (1.0 - fading.slow - fading.fast) * added_psi;
    slow_psi_ = left.of_start.slow * slow_psi_ + left.amid.slow * fading.slow * added_psi;
    fast_psi_ = left.of_start.fast * fast_psi_ + left.amid.fast * fading.fast * added_psi;
  }

  /// What is over the limit slips, and is gone.
  void slip(double max_psi) {
    const double size = std::abs(psi());
    if (!(size > max_psi)) return;
    const double kept = max_psi / size;
    lasting_psi_ *= kept;
    slow_psi_ *= kept;
    fast_psi_ *= kept;
  }

 private:
  double lasting_psi_ = 0.0;
  double slow_psi_ = 0.0;
  double fast_psi_ = 0.0;
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
        set_age_h_(final_set_age_h(mix.setting)),
        at_(final_set),
        modulus_psi_(modulus_psi()) {}

  std::size_t index() const { return at_; }

  /// To the next instant.
  void move() {
    ++at_;
    const double step_s = history_.time_s[at_] - history_.time_s[at_ - 1];
    if (step_s != step_s_) left_ = StepLeft(step_s);
    step_s_ = step_s;
    const double before_psi = modulus_psi_;
    modulus_psi_ = modulus_psi();
    const double through_psi = 0.5 * (before_psi + modulus_psi_);
    const double psi_per_k = through_psi * mix_.expansion_per_k;
    const double age_h =
        0.5 * (history_.set_age_middle_h[at_ - 1] + history_.set_age_middle_h[at_]);
    const Fading fading = fading_of(through_psi, age_h, age_h - set_age_h_);
    mean_.grow(left_, fading,
               (piece_.tied ? tied_restraint : 1.0) * psi_per_k * fall_of(history_.mean_c));
    mean_.slip(held_psi_);
    curl_.grow(left_, fading, curl_fraction * psi_per_k * fall_of(history_.gradient_c));
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
  double set_age_h_;
  std::size_t at_;
  double modulus_psi_;
  RelaxingStress mean_;  ///< over the whole depth; tension where it cools
  RelaxingStress curl_;  ///< at the top, the other way at the bottom; times the coefficient
  StepLeft left_{0.0};
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

std::vector<std::optional<double>> stress_reaches_s(const ColumnHistory& history,
                                                    const MixModel& mix, const StressCase& piece,
                                                    std::span<const double> levels) {
  check(piece);
  std::vector<std::optional<double>> reached(levels.size());
  const std::optional<std::size_t> set = at_final_set(history);
  if (!set) return reached;
  Ratios ratios(history, *set, mix, piece);
  std::size_t missing = levels.size();
  while (missing > 0 && ratios.index() + 1 < history.time_s.size()) {
    const Ratios last = ratios;
    ratios.move();
    const std::size_t i = ratios.index();
    for (std::size_t k = 0; k < levels.size(); ++k) {
      if (reached[k] || ratios.max_now() < levels[k] || ratios.now() < levels[k]) continue;
      const double ratio = ratios.now();
      const double before = last.now();
      const double fraction = ratio > before ? (levels[k] - before) / (ratio - before) : 1.0;
      reached[k] = history.time_s[i - 1] + fraction * (history.time_s[i] - history.time_s[i - 1]);
      --missing;
    }
  }
  return reached;
}

std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level) {
  return stress_reaches_s(history, mix, piece, std::span(&level, 1)).front();
}

}  // namespace slabtide
