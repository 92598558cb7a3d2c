#pragma once

#include <string_view>
#include <vector>

#include "slabtide/day/joints/joints.h"
#include "slabtide/slab/stress/stress.h"

namespace slabtide {

/// Why a cut comes at this point in the order.
enum class CutReason {
  corner,       ///< starts at an inside corner
  tied_edge,    ///< starts at the edge by which the zone is tied
  longest_run,  ///< the middle of the longest uncut run
  next_along    ///< the next one along the zone
};

/// The id used in the JSON: "longest_run".
std::string_view cut_reason_id(CutReason reason);
/// The words used in lists: "inside corner".
std::string_view cut_reason_words(CutReason reason);

/// A joint at its place in the order.
struct Cut {
  Joint joint;
  double length_m = 0.0;
  CutReason reason = CutReason::next_along;
  /// The uncut piece in which this cut is made, after all earlier cuts: its length perpendicular to
  /// the cut, whether it is tied, and whether it has an inside corner without a joint.
  StressCase piece;
};

/// Where a joint is and when it can be cut.
struct JointTurn {
  double along_m = 0.0;  ///< distance from where placing began
  double ready_s = 0.0;  ///< when the first saw can be used on it
};

/// The joints of a zone in working order: first from inside corners, then from the tied edge, then
/// the middle of the longest uncut run, then one after another from the end that is ready first
/// (those parallel to the middle one before those across). `turns` has one entry per joint. Source:
/// common practice, no source; the choice of the end to begin at is ours. Error:
/// std::invalid_argument for an outline with a fault (`outline_fault`), a joint of length 0, a
/// number of turns that differs from that of joints, and a turn that is not finite.
std::vector<Cut> order_cuts(const Zone& zone, const ZoneJoints& joints,
                            const std::vector<JointTurn>& turns);

}  // namespace slabtide
