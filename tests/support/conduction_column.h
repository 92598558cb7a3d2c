#pragma once

#include <functional>
#include <span>
#include <vector>

#include "slab/column/column_mesh.h"
#include "slab/process/conduction.h"

namespace slabtide::test {

/// Heat into the column at the surface, and its slope over the surface temperature.
struct SurfaceFlux {
  double w_m2 = 0.0;
  double slope_w_m2k = 0.0;
};

/// What passes at a temperature of the outer face; falling with it.
using SurfaceLaw = std::function<SurfaceFlux(double outer_c, Stage stage)>;

/// What a step moved: heat into the column, J/m2.
struct StepResult {
  double surface_j_m2 = 0.0;
  double bottom_j_m2 = 0.0;
};

/// Temperatures of one column and the way to move them on: what the columns' core steps side by
/// side, for double.
class ConductionColumn {
 public:
  /// All cells at `start_c`, one a cell.
  ConductionColumn(ConductionGrid grid, ConductionBottom bottom, std::vector<double> start_c);

  const ConductionGrid& grid() const { return grid_; }
  std::span<const double> cells_c() const { return cells_c_; }
  /// The column's own surface, below any cover.
  double surface_c() const { return surface_c_; }
  /// The face the surface law sees: the cover's outer one, or the surface.
  double outer_c() const { return outer_c_; }
  double stored_j_m2() const;

  /// Length of the steps to come. Error: std::invalid_argument unless above 0.
  void set_step(double step_s);
  /// A resistance without mass between the outer face and the surface, m2K/W; 0 for none.
  void set_cover(double resistance_m2k_w) { cover_m2k_w_ = resistance_m2k_w; }

  /// The surface that balances `law` against the cells as they are; moves no heat.
  void settle_surface(const SurfaceLaw& law);

  /// One step with `source_j_m2` released evenly over it, one entry a cell from the top;
  /// cells past its end have none.
  StepResult step(const SurfaceLaw& law, std::span<const double> source_j_m2);

 private:
  class Rows;

  ConductionGrid grid_;
  ConductionBottom bottom_;
  std::vector<double> cells_c_;
  std::vector<double> conductance_w_m2k_;  // of the grid, the last 0 over an insulated bottom
  std::vector<double> work_;               // rows of the steps
  double step_s_ = 0.0;
  double cover_m2k_w_ = 0.0;
  double surface_c_ = 0.0;
  double outer_c_ = 0.0;
};

/// The temperature at a place of a column.
double temperature_at(const ConductionColumn& column, const ProbePlace& place);

}  // namespace slabtide::test
