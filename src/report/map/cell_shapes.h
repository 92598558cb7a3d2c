#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// The area nearest to each cell of a zone, separately for border and field: one outline per cell,
/// in the same order. They extend past the zone's edges and must be clipped to them when drawn.
std::vector<Outline> cell_shapes(const ZoneRun& zone);

}  // namespace slabtide
