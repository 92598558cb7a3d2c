#include "cell_weather.h"

#include "slab/process/absorptance.h"

namespace slabtide {

double dry_absorptance_of(const ColumnCase& column) {
  return column.formed_face ? column.absorptance : dry_absorptance(column.absorptance);
}

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

}  // namespace slabtide
