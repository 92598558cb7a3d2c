#include "slabtide/slab/stress/stress.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
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
constexpr double relaxation = 0.65;     // CIRIA C660, from memory
constexpr double corner_factor = 1.5;   // re-entrant corner: ours

/// The slab at final set, where it carries no stress.
struct StressFree {
  std::size_t index;
  double mean_c;
  double gradient_c;
};

std::optional<StressFree> at_final_set(const ColumnHistory& history) {
  const auto& psi = history.resistance_middle_psi;
  const auto set =
      std::find_if(psi.begin(), psi.end(), [](double p) { return p >= final_set_psi; });
  if (set == psi.end()) return std::nullopt;
  const auto index = static_cast<std::size_t>(set - psi.begin());
  return StressFree{index, history.mean_c[index], history.gradient_c[index]};
}

/// Curling stress at the top face; the bottom face has the same with the opposite sign. Tension
/// (positive) if the top has cooled more than the bottom since final set. Multiply by the curling
/// coefficient.
double free_curl_psi(double gradient_fall_k, double modulus_psi, double expansion_per_k) {
  return curl_fraction * modulus_psi * expansion_per_k * gradient_fall_k;
}

double curl_coefficient_of(double modulus_psi, const StressCase& piece) {
  const double radius_m =
      relative_stiffness_radius_m(pa_from_psi(modulus_psi), piece.thickness_m, usual_subgrade_pa_m);
  return curl_coefficient(piece.uncut_length_m / radius_m);
}

/// Stress from the mean temperature, over the whole depth: tension if the slab has cooled since
/// final set, compression (negative) if it has warmed.
double mean_psi(double cooling_k, double modulus_psi, double expansion_per_k,
                const StressCase& piece) {
  const double restrained = modulus_psi * expansion_per_k * cooling_k;
  if (piece.tied) return tied_restraint * restrained;
  const double held_psi = psi_from_pa(concrete_n_m3 * friction * piece.uncut_length_m / 2.0);
  return std::clamp(restrained, -held_psi, held_psi);
}

/// Tension at the face that has more of it; 0 if both are in compression.
double tension_psi(double mean, double curl_top) {
  return std::max({0.0, mean + curl_top, mean - curl_top});
}

/// Stress over strength through a history.
class Ratios {
 public:
  Ratios(const ColumnHistory& history, const StressFree& free, const MixModel& mix,
         const StressCase& piece)
      : history_(history), free_(free), mix_(mix), piece_(piece) {}

  double at(std::size_t i) const { return ratio(i, curl_coefficient_of(modulus_psi(i), piece_)); }

  /// Never less than `at`, and much faster.
  double max_at(std::size_t i) const { return ratio(i, largest_curl_coefficient); }

 private:
  double modulus_psi(std::size_t i) const { return elastic_modulus_psi(history_.strength_psi[i]); }

  double ratio(std::size_t i, double coefficient) const {
    const double strength_psi = tensile_strength_psi(history_.strength_psi[i]);
    const double modulus = modulus_psi(i);
    const double mean =
        mean_psi(free_.mean_c - history_.mean_c[i], modulus, mix_.expansion_per_k, piece_);
    const double curl_top = coefficient * free_curl_psi(free_.gradient_c - history_.gradient_c[i],
                                                        modulus, mix_.expansion_per_k);
    const double corner = piece_.re_entrant_corner ? corner_factor : 1.0;
    return tension_psi(mean, curl_top) * relaxation * corner / strength_psi;
  }

  const ColumnHistory& history_;
  const StressFree& free_;
  const MixModel& mix_;
  const StressCase& piece_;
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
  const std::optional<StressFree> free = at_final_set(history);
  if (!free) return ratio;
  const Ratios ratios(history, *free, mix, piece);
  for (std::size_t i = free->index; i < ratio.size(); ++i) {
    if (history.strength_psi[i] > 0.0) ratio[i] = ratios.at(i);
  }
  return ratio;
}

std::optional<double> stress_reaches_s(const ColumnHistory& history, const MixModel& mix,
                                       const StressCase& piece, double level) {
  check(piece);
  const std::optional<StressFree> free = at_final_set(history);
  if (!free) return std::nullopt;
  const Ratios ratios(history, *free, mix, piece);
  for (std::size_t i = free->index; i < history.time_s.size(); ++i) {
    if (!(history.strength_psi[i] > 0.0) || ratios.max_at(i) < level) continue;
    const double ratio = ratios.at(i);
    if (ratio < level) continue;
    const bool is_first = i == free->index || !(history.strength_psi[i - 1] > 0.0);
    const double before = is_first ? 0.0 : ratios.at(i - 1);
    if (i == 0 || !(ratio > before)) return history.time_s[i];
    const double fraction = (level - before) / (ratio - before);
    return history.time_s[i - 1] + fraction * (history.time_s[i] - history.time_s[i - 1]);
  }
  return std::nullopt;
}

}  // namespace slabtide
