#include "cell_weather.h"

#include <algorithm>

#include "slab/column/column_steps.h"
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

double until_cover_changes_s(const ColumnCase& column, double time_s) {
  double until_s = forever_s;
  for (const CoverSpan& cover : column.covers) {
    for (const double change_s : {cover.from_s, cover.to_s}) {
      if (change_s > time_s) until_s = std::min(until_s, change_s - time_s);
    }
  }
  return until_s;
}

}  // namespace slabtide
