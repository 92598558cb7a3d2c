#include "slabtide/slab/convection.h"

#include <cmath>

namespace slabtide {
namespace {

// EnergyPlus Engineering Reference: DOE-2 with MoWiTT's windward coefficients, and TARP natural
// convection on a horizontal surface facing up.
constexpr double forced_scale = 3.26;
constexpr double forced_exponent = 0.89;
constexpr double roughness_concrete = 1.52;
constexpr double natural_warmer = 9.482 / 6.283;  // cos of tilt 1: 7.283 - 1
constexpr double natural_cooler = 1.810 / 2.382;  // 1.382 + 1
constexpr double still_k = 1.0e-9;  // below this difference the slope of |dT|^(1/3) is left out

}  // namespace

double forced_convection_w_m2k(double wind_m_s) {
  return forced_scale * std::pow(wind_m_s, forced_exponent);
}

Convection doe2_convection(double surface_less_air_k, double forced_w_m2k) {
  const double size_k = std::abs(surface_less_air_k);
  const double natural =
      (surface_less_air_k > 0.0 ? natural_warmer : natural_cooler) * std::cbrt(size_k);
  const double combined = std::sqrt(natural * natural + forced_w_m2k * forced_w_m2k);
  const double h = natural + roughness_concrete * (combined - natural);
  if (!(size_k > still_k) || !(combined > 0.0)) return {.h_w_m2k = h};
  const double natural_slope = natural / (3.0 * surface_less_air_k);
  const double slope = natural_slope * (1.0 + roughness_concrete * (natural / combined - 1.0));
  return {.h_w_m2k = h, .slope_w_m2k2 = slope};
}

}  // namespace slabtide
