#pragma once

#include <string_view>

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

}  // namespace slabtide
