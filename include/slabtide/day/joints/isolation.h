#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// A structure beside a zone, either separated by an isolation joint or tied to the zone.
struct Isolation {
  std::string structure;  ///< the wall's name, "the structure" or "the structure to the north"
  /// The length of the zone's edge beside it; 0 if the plan does not show it.
  double length_m = 0.0;
  bool tied = false;
  /// The wall on the plan, or the edge that is tied; both ends are equal if neither is shown.
  Joint wall;
};

/// The walls along the zone's edge (within 0.15 m, 6 in), but for the edges that are tied. A tied
/// zone is tied by the edges it names, each to the wall it runs beside longest (within 0.6 m, 2
/// ft); one that names none, to the wall it runs beside longest, else to a structure that is not on
/// the plan. The tied come first. Idealises: a wall at the slab's edge is a structure; trees are
/// not. Error: std::invalid_argument for a point that is not finite or is outside any plan.
std::vector<Isolation> find_isolation(const Zone& zone, const std::vector<Obstacle>& obstacles);

/// Whether the plan shows what the zone is tied to.
bool shows_tied_edge(const std::vector<Isolation>& isolation);

/// Whether a place is at the edge by which the zone is tied. If the plan does not show what it is
/// tied to, every place is. Error: std::invalid_argument for a place that is not finite or is
/// outside any plan.
bool at_tied_edge(const std::vector<Isolation>& isolation, Point place);

/// The same for a piece of the zone. Same errors.
bool reaches_tied_edge(const std::vector<Isolation>& isolation, const Outline& piece);

}  // namespace slabtide
