#pragma once

#include <vector>

#include "slabtide/day/joints/joint_rules.h"

// Joints for a walkway, private to this folder.

namespace slabtide {

/// Sets of joints worth trying for a walkway, those with the fewest joints first: perpendicular to
/// its line (radial where it curves), from every inside corner of a bend, and along the line in
/// as many lanes as the spacing asks for and `extra_lanes` more.
std::vector<std::vector<Joint>> walkway_joint_sets(const Zone& walk, const JointLimits& limits,
                                                   int extra_lanes);

}  // namespace slabtide
