#pragma once

#include <string>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// A structure beside a zone: kept apart by an isolation joint, or what the zone is tied to.
struct Isolation {
  std::string structure;  ///< the wall's name, or "the structure"
  /// How far the zone's edge runs beside it; 0 where the plan does not show it.
  double length_m = 0.0;
  bool tied = false;
  /// The wall on the plan; both ends alike where it is not shown.
  Joint wall;
};

/// The walls that stand along the zone's edge (within 0.15 m, 6 in). A tied zone is tied to
/// the one it runs beside longest (within 0.6 m, 2 ft), else to a structure not on the plan.
/// Idealises: a wall that stands on the slab's edge is a structure; trees are not.
/// Error: std::invalid_argument for a point that is no number or beyond any plan.
std::vector<Isolation> find_isolation(const Zone& zone, const std::vector<Obstacle>& obstacles);

/// Whether the plan shows what the zone is tied to.
bool shows_tied_edge(const std::vector<Isolation>& isolation);

/// Whether a place lies at the edge by which the zone is tied. Where the plan does not show
/// what it is tied to, every place does.
/// Error: std::invalid_argument for a place that is no number or beyond any plan.
bool at_tied_edge(const std::vector<Isolation>& isolation, Point place);

/// The same of a piece of the zone. Errors alike.
bool reaches_tied_edge(const std::vector<Isolation>& isolation, const Outline& piece);

}  // namespace slabtide
