#include "slabtide/slab/column/cell_weather.h"

#include "slab/column/cell_weather-inl.h"

namespace slabtide {
namespace {

namespace formula = HWY_NAMESPACE;
using formula::GridPlace;

double between(const std::vector<double>& values, GridPlace place) {
  const double before = values[place.before];
  return before + place.fraction * (values[place.before + 1] - before);
}

/// Of a column, what the weather meets.
struct Surroundings {
  double absorptance;
  double sky_view;
  double convection_factor;
  double evaporation_factor;
};

}  // namespace

CoverState cover_at(const ColumnCase& column, double time_s) {
  CoverState state;
  if (column.formed_face) state = {form_resistance_m2k_w, true};
  for (const CoverSpan& cover : column.covers) {
    if (!(time_s >= cover.from_s && time_s < cover.to_s)) continue;
    state.resistance_m2k_w += cover.resistance_m2k_w;
    state.stops_evaporation = state.stops_evaporation || cover.stops_evaporation;
  }
  return state;
}

SurfaceConditions conditions_at(const ColumnCase& column, const SiteWeather& weather, double time_s,
                                double wetness) {
  const GridPlace place = formula::place_on(weather.grid, formula::steps_to(weather.grid, time_s));
  const formula::WeatherNow<double> now{
      between(weather.air_c, place), between(weather.vapour_pressure_pa, place),
      between(weather.wind_slab_m_s, place), between(weather.sky_emissivity, place),
      between(column.exposure->shortwave_w_m2, place)};
  const Surroundings fixed{column.absorptance, column.exposure->sky_view, column.convection_factor,
                           column.evaporation_factor};
  const auto found =
      formula::surface_conditions(now, fixed, thin_air(weather.air_pressure_pa), wetness);
  return {.absorbed_w_m2 = found.absorbed_w_m2,
          .air_c = found.air_c,
          .vapour_pressure_pa = found.vapour_pressure_pa,
          .forced_w_m2k = found.forced_w_m2k,
          .convection_factor = found.convection_factor,
          .evaporation_kg_m2_h_pa = found.evaporation_kg_m2_h_pa};
}

}  // namespace slabtide
