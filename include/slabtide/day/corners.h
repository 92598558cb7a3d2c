#pragma once

#include <vector>

#include "slabtide/core/geometry.h"

namespace slabtide {

/// The corners of an outline that point into the slab: a crack starts there unless a joint
/// does. A turn of less than 20 degrees is a bend of a curve, not a corner (ours).
std::vector<Point> re_entrant_corners(const Outline& outline);

}  // namespace slabtide
