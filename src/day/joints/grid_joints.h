#pragma once

#include <vector>

#include "slabtide/day/joints/joint_rules.h"

// Joints for an outline, private to this folder.

namespace slabtide {

/// Sets of joints worth trying for an outline, those with the least to saw first: grids along its
/// longest side, with one or two lines through every inside corner and the stretches between them
/// divided evenly.
std::vector<std::vector<Joint>> grid_joint_sets(const Outline& outline, const JointLimits& limits);

}  // namespace slabtide
