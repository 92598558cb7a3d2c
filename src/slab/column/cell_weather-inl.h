// Compiled once for each instruction set (Highway's scheme), hence no ordinary include guard.
#if defined(SLABTIDE_SLAB_CELL_WEATHER_INL_H) == defined(HWY_TARGET_TOGGLE)
#ifdef SLABTIDE_SLAB_CELL_WEATHER_INL_H
#undef SLABTIDE_SLAB_CELL_WEATHER_INL_H
#else
#define SLABTIDE_SLAB_CELL_WEATHER_INL_H
#endif

#include "slab/process/convection-inl.h"
#include "slab/process/evaporation-inl.h"
#include "slab/process/surface_balance-inl.h"
#include "slab/process/thin_air.h"
#include "slabtide/weather/site/site_weather.h"

HWY_BEFORE_NAMESPACE();
namespace slabtide {
namespace HWY_NAMESPACE {

/// A place between two instants of the grid.
struct GridPlace {
  std::size_t before;
  double fraction;  // of the way to the next instant
};

/// The place of an instant, kept within the grid.
inline GridPlace place_on(const TimeGrid& grid, double at_s) {
  const double steps = clamp(at_s / grid.step_s, 0.0, static_cast<double>(grid.count - 1));
  const std::size_t before = std::min(static_cast<std::size_t>(steps), grid.count - 2);
  return {before, steps - static_cast<double>(before)};
}

/// The weather for a column at one instant.
template <class Number>
struct WeatherNow {
  Number air_c;
  Number vapour_pressure_pa;
  Number forced_w_m2k;            // what the wind does to convection
  Number evaporation_kg_m2_h_pa;  // and to evaporation
  Number sky_emissivity;
  Number shortwave_w_m2;
};

/// What a wind at the slab does to convection, in air as thin as it is there.
template <class Number>
Number wind_convection_w_m2k(Number wind_slab_m_s, const ThinAir& air) {
  return air.forced_over_natural * forced_convection_w_m2k(wind_slab_m_s);
}

/// The surface conditions of a column at an instant. `wetness` is the fraction of free-water
/// evaporation from the surface; `dampness` is how dark it still is (1 wet, 0 dry). Departures: a
/// formed face uses the convection of a horizontal surface; a cover that breathes and insulates
/// (wet fabric) evaporates from its outer face. `Column` has absorptance, dry_absorptance,
/// sky_view, convection_factor and evaporation_factor.
template <class Number, class Column>
ConditionsOf<Number> surface_conditions(const WeatherNow<Number>& now, const Column& column,
                                        const ThinAir& air, Number wetness, Number dampness) {
  const Number longwave =
      absorbed_longwave_w_m2(now.air_c, now.sky_emissivity, Number(column.sky_view));
  const Number absorptance =
      column.dry_absorptance + dampness * (column.absorptance - column.dry_absorptance);
  return {absorptance * now.shortwave_w_m2 + longwave,
          now.air_c,
          now.vapour_pressure_pa,
          now.forced_w_m2k,
          air.natural_convection * column.convection_factor,
          wetness * column.evaporation_factor * now.evaporation_kg_m2_h_pa};
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide
HWY_AFTER_NAMESPACE();

#endif
