#include "slabtide/day/windows/frost_risk.h"

#include <algorithm>
#include <limits>

namespace slabtide {

FrostRisk frost_on_young(const ZoneRun& zone, const PourRun& run, const WeatherLimits& limits) {
  FrostRisk risk;
  risk.min_surface_c = std::numeric_limits<double>::infinity();
  for (const CellRun& cell : zone.cells) {
    const YoungSurface young = young_surface(run.histories[cell.history], limits);
    if (young.min_c < risk.min_surface_c) {
      risk.min_surface_c = young.min_c;
      risk.coldest_at = run.at(young.coldest_s);
    }
    if (!young.freezes_s) continue;
    const UtcTime at = run.at(*young.freezes_s);
    risk.at = std::min(risk.at.value_or(at), at);
  }
  return risk;
}

}  // namespace slabtide
