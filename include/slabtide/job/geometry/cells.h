#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

inline constexpr double cell_size_m = 0.6096;  ///< about 2 ft
/// A pour among obstacles is cut into about so many cells at most, 20,000 ft2 at 2 ft (ours): its
/// windows are of a tenth of each zone, not of a cell.
inline constexpr double max_cells = 5000.0;
/// As `max_cells` where a pour is computed many times over, for a comparison or a week of starts
/// (ours): 4,000 ft2 at 2 ft.
inline constexpr double max_cells_of_many = 1000.0;
inline constexpr double longest_zone_m = 1000.0;  ///< east to west or north to south

/// A piece of a zone small enough for its concrete to be in one state.
struct Cell {
  Point centre;
  double area_m2 = 0.0;
  /// Fraction of the zone that has been placed when placing reaches this cell's middle, 0 to 1.
  double placed_fraction = 0.0;
  /// Distance from where placing begins, along a walkway's line or along the placing direction.
  double along_m = 0.0;
  /// Part of the border strip rather than the field.
  bool border = false;
};

/// The side of the cells that the job's zones are cut into: `cell_size_m`, or larger where
/// something throws shade and they would be over `most_cells`. In the open most cells share a
/// column, so that there may be any number of them.
double cell_size_for(const Job& job, double most_cells = max_cells);

/// The zone cut into cells of about `size_m`, in placing order; at least one. Their areas sum
/// to the outline's within 1e-6; a cell clipped by the outline has its own centroid. A border strip
/// is cut separately. Slivers join a neighbour of the same kind. Error: std::invalid_argument for
/// an outline with a fault (`outline_fault`) or longer than `longest_zone_m`, a border width or
/// size that is not positive, a direction that is not finite, or a walkway line that
/// `walkway_fault` refuses.
std::vector<Cell> cut_into_cells(const Zone& zone, double size_m = cell_size_m);

}  // namespace slabtide
