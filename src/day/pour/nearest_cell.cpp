#include "nearest_cell.h"

#include <cmath>

namespace slabtide {

const CellRun& nearest_cell(const ZoneRun& zone, Point place) {
  constexpr double hair_m = 1e-6;
  const auto away_m = [place](const CellRun& run) {
    return std::hypot(run.cell.centre.x_m - place.x_m, run.cell.centre.y_m - place.y_m);
  };
  const CellRun* nearest = &zone.cells.front();
  double nearest_m = away_m(*nearest);
  for (const CellRun& cell : zone.cells) {
    const double cell_m = away_m(cell);
    if (!(cell_m < nearest_m - hair_m)) continue;
    nearest = &cell;
    nearest_m = cell_m;
  }
  return *nearest;
}

}  // namespace slabtide
