#pragma once

#include <vector>

#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/joints/isolation.h"
#include "slabtide/day/joints/joint_rules.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The joints of a zone and what they make of it.
struct ZoneJoints {
  bool drawn = false;  ///< by the user; else proposed here
  /// Within the zone: what was drawn beyond its edges is cut off, and what ends within 0.15 m
  /// (6 in) short of an edge or another joint is taken to reach it.
  std::vector<Joint> joints;
  std::vector<Panel> panels;  ///< along a walk, else from the north-west as a page is read
  JointLimits limits;
  std::vector<JointFault> faults;  ///< of a proposal: what it could not keep
  std::vector<Isolation> isolation;

  /// A rule is broken, not just a preference.
  bool breaks_a_rule() const;
};

/// The joints drawn for the zone, else a proposal with as little to saw as the rules allow, held
/// against the rules.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`), a line that
/// `walkway_fault` refuses, a drawn joint without length, a thickness or rules that are not
/// positive, and a point, an obstacle's too, that is no number or beyond any plan.
ZoneJoints plan_joints(const Zone& zone, const Job& job, const JointSpacing& rules);

}  // namespace slabtide
