#pragma once

#include <vector>

#include "plane.h"

// Straight lines across an outline, private to this folder.

namespace slabtide::chords {

/// The parts of the segment that lie inside the outline and not along its sides, in order.
std::vector<Joint> inside(const Outline& outline, const Joint& segment);

/// The same for the infinite straight line through a point.
std::vector<Joint> across(const Outline& outline, Point through, plane::Vector direction);

/// Extends a drawn joint to what it almost reaches: each end that is at most `reach_m` short of a
/// side or of another joint, straight ahead, is moved there.
Joint reaching(const Joint& joint, const Outline& outline, const std::vector<Joint>& others,
               double reach_m);

}  // namespace slabtide::chords
