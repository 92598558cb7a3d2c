#include "strength.h"

#include <cmath>

#include "setting.h"

namespace slabtide {
namespace {

constexpr double rate_per_day = 0.35;             // ours
constexpr double start_before_final_set_h = 1.3;  // ours
constexpr double specified_age_days = 28.0;

constexpr double tensile_scale = 0.584;    // Oluokun et al. 1991, from memory
constexpr double tensile_exponent = 0.79;  // the same, published
constexpr double modulus_scale = 57000.0;  // ACI 318

}  // namespace

double usual_strength_margin_psi(double specified_psi) {
  constexpr double low_psi = 3000.0;
  constexpr double high_psi = 5000.0;
  if (specified_psi < low_psi) return 1000.0;
  return specified_psi <= high_psi ? 1200.0 : 0.10 * specified_psi + 700.0;
}

StrengthParameters strength_parameters(double mean_psi, const SettingParameters& setting) {
  const double grown = specified_age_days * rate_per_day;
  return {.ultimate_psi = mean_psi * (1.0 + grown) / grown,
          .rate_per_day = rate_per_day,
          .start_set_age_h = final_set_age_h(setting) - start_before_final_set_h};
}

double tensile_strength_psi(double strength_psi) {
  return strength_psi > 0.0 ? tensile_scale * std::pow(strength_psi, tensile_exponent) : 0.0;
}

double elastic_modulus_psi(double strength_psi) {
  return strength_psi > 0.0 ? modulus_scale * std::sqrt(strength_psi) : 0.0;
}

}  // namespace slabtide
