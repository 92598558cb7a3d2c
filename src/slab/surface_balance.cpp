#include "slabtide/slab/surface_balance.h"

#include <algorithm>

#include "slabtide/core/units.h"
#include "slabtide/slab/convection.h"
#include "slabtide/weather/moist_air.h"

namespace slabtide {
namespace {

constexpr double stefan_boltzmann_w_m2k4 = 5.670374419e-8;  // CODATA 2018
constexpr double vapour_gas_constant_j_kgk = 461.5;
// Newton may step outside what moist air covers on its way; the root never lies there.
constexpr double coldest_surface_c = -90.0;
constexpr double hottest_surface_c = 150.0;

void add_longwave(double surface_k, SurfaceExchange& exchange) {
  const double cubed =
      surface_emissivity * stefan_boltzmann_w_m2k4 * surface_k * surface_k * surface_k;
  exchange.w_m2 -= cubed * surface_k;
  exchange.slope_w_m2k -= 4.0 * cubed;
}

void add_convection(const SurfaceConditions& conditions, double surface_c,
                    SurfaceExchange& exchange) {
  const double warmer_k = surface_c - conditions.air_c;
  const Convection convection = doe2_convection(warmer_k, conditions.forced_w_m2k);
  exchange.w_m2 -= conditions.convection_factor * convection.h_w_m2k * warmer_k;
  exchange.slope_w_m2k -=
      conditions.convection_factor * (convection.h_w_m2k + convection.slope_w_m2k2 * warmer_k);
}

void add_evaporation(const SurfaceConditions& conditions, double surface_c,
                     SurfaceExchange& exchange) {
  if (conditions.evaporation_kg_m2_h_pa == 0.0) return;
  const double saturation_pa = saturation_pressure_pa(surface_c);
  const double drive_pa = saturation_pa - conditions.vapour_pressure_pa;
  if (!(drive_pa > 0.0)) return;
  const double latent = latent_heat_j_kg(surface_c);
  const double k = kelvin_from_celsius(surface_c);
  const double saturation_slope = saturation_pa * latent / (vapour_gas_constant_j_kgk * k * k);
  const double heat_w_m2_pa = conditions.evaporation_kg_m2_h_pa * latent / seconds_per_hour;
  exchange.evaporation_kg_m2_h = conditions.evaporation_kg_m2_h_pa * drive_pa;
  exchange.w_m2 -= heat_w_m2_pa * drive_pa;
  exchange.slope_w_m2k -= heat_w_m2_pa * saturation_slope;  // Clausius-Clapeyron
}

}  // namespace

double absorbed_longwave_w_m2(double air_c, double sky_emissivity, double sky_view) {
  const double k = kelvin_from_celsius(air_c);
  const double black_w_m2 = stefan_boltzmann_w_m2k4 * k * k * k * k;
  return surface_emissivity * black_w_m2 * (sky_view * sky_emissivity + 1.0 - sky_view);
}

SurfaceExchange surface_exchange(const SurfaceConditions& conditions, double surface_c) {
  const double within_c = std::clamp(surface_c, coldest_surface_c, hottest_surface_c);
  SurfaceExchange exchange{.w_m2 = conditions.absorbed_w_m2};
  add_longwave(kelvin_from_celsius(surface_c), exchange);
  add_convection(conditions, surface_c, exchange);
  add_evaporation(conditions, within_c, exchange);
  return exchange;
}

}  // namespace slabtide
