#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/joints/cut_plan.h"

namespace slabtide {

/// Consecutive sawing in one zone without a long wait between cuts.
struct SawRun {
  UtcTime start;
  UtcTime end;
  double slack_min = 0.0;     ///< how much later it could be with every cut still in time
  bool has_limit = false;     ///< one of its cuts has a latest time
  std::size_t first_cut = 0;  ///< of those of the shift (`SawShift::cuts`), which follow each other
  std::size_t cut_count = 0;
};

/// The runs of a zone in the shift of the saw that was chosen for it; none if its joints are not
/// sawn.
std::vector<SawRun> saw_runs(std::size_t zone, const CutPlan& cuts);

/// Total length of the joints in a zone, m.
double joint_length_m(const ZoneJoints& joints);

}  // namespace slabtide
