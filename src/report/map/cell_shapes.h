#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// The ground nearest to each cell of a zone, border and field apart: one outline a cell, in
/// their order. They reach past the zone's edges and are to be clipped by these when drawn.
std::vector<Outline> cell_shapes(const ZoneRun& zone);

}  // namespace slabtide
