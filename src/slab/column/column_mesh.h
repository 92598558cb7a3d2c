#pragma once

#include <cstddef>

#include "slab/process/conduction.h"
#include "slabtide/slab/column/column.h"

namespace slabtide {

/// The ground's temperature is fixed at this depth under the slab (ours), or 0.3 m under the last
/// base course if that is deeper.
inline constexpr double fixed_ground_below_slab_m = 0.6;

/// Depths at which setting is followed, from the exposed surface.
struct ProbeDepths {
  double top_m = 0.0;     ///< 5 mm
  double work_m = 0.0;    ///< 20 mm: what finishers feel
  double deep_m = 0.0;    ///< 40 mm or mid-depth, whichever is less
  double middle_m = 0.0;  ///< initial and final set
};
ProbeDepths probe_depths(double thickness_m);

/// A place between two nodes of a column: the surface is node 0, cell i is node i + 1.
struct ProbePlace {
  std::size_t above = 0;
  double fraction = 0.0;  ///< of the way to the next node
};
ProbePlace probe_place(const ConductionGrid& grid, double depth_m);

/// The column of a case divided into cells: the slab first, then base and soil.
struct ColumnMesh {
  ConductionGrid grid;
  std::size_t slab_cells = 0;
  ConductionBottom bottom;
};
ColumnMesh column_mesh(const ColumnCase& column, const SolverSettings& settings);

/// The temperature below the slab at the start.
double ground_at_c(const ColumnCase& column, double below_slab_m);

}  // namespace slabtide
