#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/joints/cut_plan.h"

namespace slabtide {

/// A stretch at the saw in one zone without a long wait between its cuts.
struct SawRun {
  UtcTime start;
  UtcTime end;
  double slack_min = 0.0;  ///< it could be so much later and every cut still be in time
  bool has_limit = false;  ///< one of its cuts has a latest time
};

/// The runs of a zone in the shift of the saw that was chosen for it; none where its joints
/// are not sawn.
std::vector<SawRun> saw_runs(std::size_t zone, const CutPlan& cuts);

/// Metres of joint in a zone.
double joint_length_m(const ZoneJoints& joints);

}  // namespace slabtide
