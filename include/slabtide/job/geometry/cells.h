#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

inline constexpr double cell_size_m = 0.6096;     ///< about 2 ft
inline constexpr double longest_zone_m = 1000.0;  ///< east to west or north to south

/// A piece of a zone small enough to be one state of the concrete.
struct Cell {
  Point centre;
  double area_m2 = 0.0;
  /// Share of the zone that is placed when the middle of this cell is, 0 to 1.
  double placed_fraction = 0.0;
  /// Distance from where placing begins, along a walk's line or along the placing direction.
  double along_m = 0.0;
  /// Part of the border strip rather than of the field.
  bool border = false;
};

/// The zone cut into cells of about `cell_size_m`, whose areas sum to the outline's within
/// 1e-6; cells clipped by the outline have their own centroid. A border strip is cut into
/// pieces of its own. Pieces too small to matter join their neighbour of the same kind. In the
/// order they are placed; at least one.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`) or over
/// `longest_zone_m`, a border that is not positive, a direction that is no number, and a walk's
/// line that `walkway_fault` refuses.
std::vector<Cell> cut_into_cells(const Zone& zone);

}  // namespace slabtide
