// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_SURFACE_BALANCE_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_SURFACE_BALANCE_INL_H
#undef SLABTIDE_SLAB_SURFACE_BALANCE_INL_H
#else
#define SLABTIDE_SLAB_SURFACE_BALANCE_INL_H
#endif

#include "core/numbers-inl.h"
#include "slab/process/convection-inl.h"
#include "slab/process/evaporation-inl.h"
#include "slabtide/core/units.h"
#include "weather/air/moist_air-inl.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

constexpr double surface_emissivity = 0.93;  // longwave: ours, usual range 0.90 to 0.95
constexpr double stefan_boltzmann_w_m2k4 = 5.670374419e-8;  // CODATA 2018
constexpr double vapour_gas_constant_j_kgk = 461.5;
// Newton's method may temporarily leave the range of the moist air formulas; the root never does.
constexpr double coldest_surface_c = -90.0;
constexpr double hottest_surface_c = 150.0;

/// Heat through the surface, and its derivative with respect to the surface temperature.
template <class Number>
struct ExchangeOf {
  Number w_m2;  // into the surface
  Number slope_w_m2k;
  Number evaporation_kg_m2_h;
};

template <class Mask, class Number>
ExchangeOf<Number> select(Mask which, const ExchangeOf<Number>& yes, const ExchangeOf<Number>& no) {
  return {select(which, yes.w_m2, no.w_m2), select(which, yes.slope_w_m2k, no.slope_w_m2k),
          select(which, yes.evaporation_kg_m2_h, no.evaporation_kg_m2_h)};
}

/// The conditions at a surface at one instant.
template <class Number>
struct ConditionsOf {
  Number absorbed_w_m2;  // shortwave, and longwave from sky and walls
  Number air_c;
  Number vapour_pressure_pa;
  Number forced_w_m2k;  // wind's part of convection
  Number convection_factor;
  Number evaporation_kg_m2_h_pa;  // per Pa of driving pressure; 0 if nothing evaporates
};

/// Longwave that a surface absorbs from the sky it sees and, over the rest of its view, from walls
/// at air temperature, W/m2: e_s s T_a^4 (F e_sky + 1 - F).
/// Status: ours (walls at air temperature), Stefan-Boltzmann published.
template <class Number>
Number absorbed_longwave_w_m2(Number air_c, Number sky_emissivity, Number sky_view) {
  const Number k = kelvin_from_celsius(air_c);
  const Number squared = k * k;
  return surface_emissivity * stefan_boltzmann_w_m2k4 * squared * squared *
         (sky_view * sky_emissivity + 1.0 - sky_view);
}

template <class Number>
void add_longwave(Number surface_k, ExchangeOf<Number>& exchange) {
  const Number cubed =
      surface_emissivity * stefan_boltzmann_w_m2k4 * surface_k * surface_k * surface_k;
  exchange.w_m2 -= cubed * surface_k;
  exchange.slope_w_m2k -= 4.0 * cubed;
}

template <class Number, class Conditions>
void add_convection(const Conditions& conditions, Number surface_c, ExchangeOf<Number>& exchange) {
  const Number warmer_k = surface_c - conditions.air_c;
  const auto convection = doe2_convection(warmer_k, Number(conditions.forced_w_m2k));
  exchange.w_m2 -= conditions.convection_factor * convection.h_w_m2k * warmer_k;
  exchange.slope_w_m2k -=
      conditions.convection_factor * (convection.h_w_m2k + convection.slope_w_m2k2 * warmer_k);
}

template <class Number, class Conditions>
void add_evaporation(const Conditions& conditions, Number surface_c, ExchangeOf<Number>& exchange) {
  const Number saturation_pa = saturation_pressure_pa(surface_c);
  const Number latent = latent_heat_j_kg(surface_c);
  const Number k = kelvin_from_celsius(surface_c);
  const Number saturation_slope = saturation_pa * latent / (vapour_gas_constant_j_kgk * k * k);
  const Number drive_pa = saturation_pa - conditions.vapour_pressure_pa;
  const Number kg_m2_h_pa =
      select(drive_pa > 0.0, Number(conditions.evaporation_kg_m2_h_pa), Number(0.0));
  const Number heat_w_m2_pa = kg_m2_h_pa * latent * (1.0 / seconds_per_hour);
  exchange.evaporation_kg_m2_h = kg_m2_h_pa * drive_pa;
  exchange.w_m2 -= heat_w_m2_pa * drive_pa;
  exchange.slope_w_m2k -= heat_w_m2_pa * saturation_slope;  // Clausius-Clapeyron
}

/// Balance of shortwave, longwave, convection and the latent heat of evaporation.
///
/// Idealises: one surface temperature; walls at air temperature; evaporation never below 0.
/// The slope is accurate to 2 %, which is enough for Newton's method.
/// Sources: convection-inl.h, evaporation-inl.h, moist_air.h.
/// `Conditions` has the members of ConditionsOf.
template <class Number, class Conditions>
ExchangeOf<Number> surface_exchange(const Conditions& conditions, Number surface_c) {
  ExchangeOf<Number> exchange{conditions.absorbed_w_m2, 0.0, 0.0};
  add_longwave(kelvin_from_celsius(surface_c), exchange);
  add_convection(conditions, surface_c, exchange);
  add_evaporation(conditions, clamp(surface_c, coldest_surface_c, hottest_surface_c), exchange);
  return exchange;
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
