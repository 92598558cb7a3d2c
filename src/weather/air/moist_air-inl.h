// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_WEATHER_MOIST_AIR_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_WEATHER_MOIST_AIR_INL_H
#undef SLABTIDE_WEATHER_MOIST_AIR_INL_H
#else
#define SLABTIDE_WEATHER_MOIST_AIR_INL_H
#endif

#include "core/numbers-inl.h"
#include "slabtide/core/units.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

// Hyland & Wexler 1983 over liquid water: ln p = c8/K + c9 + c10 K + c11 K² + c12 K³ + c13 ln K,
// numbered as in ASHRAE Fundamentals, psychrometrics, eq. 6.
constexpr double c8_k = -5800.2206;
constexpr double c9 = 1.3914993;
constexpr double c10_per_k = -0.048640239;
constexpr double c11_per_k2 = 4.1764768e-5;
constexpr double c12_per_k3 = -1.4452093e-8;
constexpr double c13 = 6.5459673;

constexpr double latent_heat_at_0c_j_kg = 2500.8e3;
constexpr double latent_heat_slope_j_kgk = 2.36e3;

template <class Number>
Number saturation_pressure_pa(Number air_c) {
  const Number k = kelvin_from_celsius(air_c);
  return exp(c8_k / k + c9 + k * (c10_per_k + k * (c11_per_k2 + k * c12_per_k3)) +
             c13 * log(k));  // eq. 6
}

template <class Number>
Number latent_heat_j_kg(Number water_c) {
  return latent_heat_at_0c_j_kg - latent_heat_slope_j_kgk * water_c;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
