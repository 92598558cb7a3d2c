#include "slabtide/slab/column/cell_weather.h"

namespace slabtide {

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
