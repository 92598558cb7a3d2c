#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The corners of an outline that point into the slab: a crack starts there unless a joint does. A
/// turn of less than 20 degrees counts as a bend of a curve rather than a corner (ours). Error:
/// std::invalid_argument for a point that is not finite or is outside any plan.
std::vector<Point> re_entrant_corners(const Outline& outline);

/// Whether the joint starts at the corner or passes it within 0.02 m (ours: a blade's width and the
/// accuracy of the work).
bool relieves(const Joint& joint, Point corner);

}  // namespace slabtide
