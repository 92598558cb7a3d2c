#pragma once

#include <vector>

#include "map_choices.h"
#include "slabtide/core/geometry.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The path along which to work through a zone: from what is ready first to what is ready last,
/// through its parts if it has any, else through quarters of a walkway's area or halves of another
/// zone's. Each stop is the middle of a cell. Empty if the whole zone is ready at once, or if its
/// first and last cells are close together.
std::vector<Point> working_way(const Zone& zone, const ZonePlan& plan, const ZoneRun& run,
                               const std::vector<MapCell>& cells);

}  // namespace slabtide
