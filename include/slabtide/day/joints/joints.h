#pragma once

#include <vector>

#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/joints/isolation.h"
#include "slabtide/day/joints/joint_rules.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The joints of a zone and the panels between them.
struct ZoneJoints {
  bool drawn = false;  ///< by the user; else proposed here
  /// Inside the zone: parts drawn beyond its edges are cut off, and an end at most 0.15 m (6 in)
  /// short of an edge or another joint is extended to it.
  std::vector<Joint> joints;
  std::vector<Panel> panels;  ///< along a walkway, else in reading order from the north-west
  JointLimits limits;
  std::vector<JointFault> faults;  ///< for a proposal: the rules it could not keep
  std::vector<Isolation> isolation;

  /// True if a rule is broken, not just a preference.
  bool breaks_a_rule() const;
};

/// The joints drawn for the zone, else a proposal with as little to saw as the rules allow, checked
/// against the rules. Error: std::invalid_argument for an outline with a fault (`outline_fault`), a
/// line that `walkway_fault` refuses, a drawn joint of length 0, a thickness or rules that are not
/// positive, and a point (also of an obstacle) that is not finite or is outside any plan.
ZoneJoints plan_joints(const Zone& zone, const Job& job, const JointSpacing& rules);

}  // namespace slabtide
