#pragma once

#include <string_view>
#include <vector>

#include "slabtide/day/joints/joints.h"
#include "slabtide/slab/stress/stress.h"

namespace slabtide {

/// Why a cut has its turn.
enum class CutReason {
  corner,       ///< starts at an inside corner
  tied_edge,    ///< starts at the edge by which the zone is tied
  longest_run,  ///< the middle of the longest uncut run
  next_along    ///< the next one along
};

/// The id used in the JSON: "longest_run".
std::string_view cut_reason_id(CutReason reason);
/// As it stands in a list: "inside corner".
std::string_view cut_reason_words(CutReason reason);

/// A joint in its turn.
struct Cut {
  Joint joint;
  double length_m = 0.0;
  CutReason reason = CutReason::next_along;
  /// What is still in one piece where it is cut, all cuts before it made: its length square to
  /// the cut, whether it is tied, whether it has an inside corner without a joint.
  StressCase piece;
};

/// Where a joint lies and when it can be cut.
struct JointTurn {
  double along_m = 0.0;  ///< how far from where placing began
  double ready_s = 0.0;  ///< when the first saw can be on it
};

/// The joints of a zone in working order: from inside corners first, then from the tied edge,
/// then the middle of the longest uncut run, then one after another from the end that is ready
/// first (those that run like the middle one before those across). `turns` has one entry a
/// joint. Source: common practice, no source; the end to begin at is ours.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`), a joint without
/// length, another number of turns than of joints, and a turn that is no number.
std::vector<Cut> order_cuts(const Zone& zone, const ZoneJoints& joints,
                            const std::vector<JointTurn>& turns);

}  // namespace slabtide
