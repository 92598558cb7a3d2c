#include "slabtide/slab/cell_weather.h"

#include <algorithm>

#include "slabtide/slab/convection.h"
#include "slabtide/slab/evaporation.h"

namespace slabtide {
namespace {

/// A place between two instants of the grid.
struct GridPlace {
  std::size_t before;
  double share;  // of the way to the next instant
};

GridPlace place_on(const TimeGrid& grid, double time_s) {
  const double steps = std::clamp(time_s / grid.step_s, 0.0, static_cast<double>(grid.count - 1));
  const std::size_t before = std::min(static_cast<std::size_t>(steps), grid.count - 2);
  return {before, steps - static_cast<double>(before)};
}

double between(const std::vector<double>& values, GridPlace place) {
  const double before = values[place.before];
  return before + place.share * (values[place.before + 1] - before);
}

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
  const GridPlace place = place_on(weather.grid, time_s);
  const double air_c = between(weather.air_c, place);
  const double wind_m_s = between(weather.wind_slab_m_s, place);
  const double shortwave = column.absorptance * between(column.exposure->shortwave_w_m2, place);
  const double longwave = absorbed_longwave_w_m2(air_c, between(weather.sky_emissivity, place),
                                                 column.exposure->sky_view);
  return {.absorbed_w_m2 = shortwave + longwave,
          .air_c = air_c,
          .vapour_pressure_pa = between(weather.vapour_pressure_pa, place),
          .forced_w_m2k = forced_convection_w_m2k(wind_m_s),
          .convection_factor = column.convection_factor,
          .evaporation_kg_m2_h_pa =
              wetness * column.evaporation_factor * menzel_coefficient_kg_m2_h_pa(wind_m_s)};
}

}  // namespace slabtide
