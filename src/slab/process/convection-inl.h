// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_CONVECTION_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_CONVECTION_INL_H
#undef SLABTIDE_SLAB_CONVECTION_INL_H
#else
#define SLABTIDE_SLAB_CONVECTION_INL_H
#endif

#include "core/numbers-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// EnergyPlus Engineering Reference: DOE-2 with MoWiTT's windward coefficients, and TARP natural
// convection on a horizontal surface facing up.
constexpr double forced_scale = 3.26;
constexpr double forced_exponent = 0.89;
constexpr double roughness_concrete = 1.52;
constexpr double natural_warmer = 9.482 / 6.283;  // cos of tilt 1: 7.283 - 1
constexpr double natural_cooler = 1.810 / 2.382;  // 1.382 + 1
constexpr double still_k = 1.0e-9;  // below this difference the slope of |dT|^(1/3) is left out

/// Heat transfer coefficient between a surface and the air; the slope is with respect to the
/// surface temperature, for Newton's method.
template <class Number>
struct ConvectionOf {
  Number h_w_m2k;
  Number slope_w_m2k2;
};

/// The wind part of convection for a rough surface: 3.26 V^0.89, W/m2K.
template <class Number>
Number forced_convection_w_m2k(Number wind_m_s) {
  constexpr double calm_m_s = 1.0e-30;  // a power of 0 is undefined
  return select(wind_m_s > calm_m_s,
                forced_scale * pow(max(wind_m_s, Number(calm_m_s)), Number(forced_exponent)),
                Number(0.0));
}

/// DOE-2 convection at a horizontal surface that faces up.
///
/// Idealises: natural and forced parts combined; roughness of concrete. Published forms differ by
/// 40 % either way. Range: natural part for any |dT|, wind 0 to about 12 m/s.
/// Symbols: h = h_n + R_f (h_g - h_n), h_g = sqrt(h_n^2 + (3.26 V^0.89)^2), R_f 1.52;
/// h_n = 9.482 |dT|^(1/3) / 6.283 (surface warmer), 1.810 |dT|^(1/3) / 2.382 (cooler).
/// Source: EnergyPlus Engineering Reference, outside surface heat balance, DOE-2 model and
/// TARP natural convection at zero tilt. Status: published.
template <class Number>
ConvectionOf<Number> doe2_convection(Number surface_less_air_k, Number forced_w_m2k) {
  constexpr double none_w_m2k = 1.0e-30;  // avoids division by 0
  const Number size_k = abs(surface_less_air_k);
  const Number natural =
      select(surface_less_air_k > 0.0, Number(natural_warmer), Number(natural_cooler)) *
      cbrt(size_k);
  const Number combined = sqrt(natural * natural + forced_w_m2k * forced_w_m2k);
  const Number h = natural + roughness_concrete * (combined - natural);
  const Number natural_size_slope = natural / (3.0 * max(size_k, Number(still_k)));
  const Number natural_slope =
      select(surface_less_air_k > 0.0, natural_size_slope, -natural_size_slope);
  const Number slope =
      natural_slope *
      (1.0 + roughness_concrete * (natural / max(combined, Number(none_w_m2k)) - 1.0));
  return {h, select(size_k > still_k, slope, Number(0.0))};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
