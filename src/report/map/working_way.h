#pragma once

#include <vector>

#include "map_choices.h"
#include "slabtide/core/geometry.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The way to work through a zone: from what is ready first to what is ready last, through its
/// parts where it has any, else by quarters of a walk's area, halves of another's. Each stop is
/// the middle of a cell.
/// Empty where the zone is ready all at once, or its first and its last lie side by side.
std::vector<Point> working_way(const Zone& zone, const ZonePlan& plan, const ZoneRun& run,
                               const std::vector<MapCell>& cells);

}  // namespace slabtide
