#pragma once

#include <functional>
#include <span>
#include <vector>

#include "slab/column/column_mesh.h"
#include "slab/process/conduction.h"

namespace slabtide::test {

/// Heat into the column at the surface, and its derivative with respect to the surface temperature.
struct SurfaceFlux {
  double w_m2 = 0.0;
  double slope_w_m2k = 0.0;
};

/// The flux at a temperature of the outer face; it decreases with the temperature.
using SurfaceLaw = std::function<SurfaceFlux(double outer_c, Stage stage)>;

/// Heat into the column during a step, J/m2.
struct StepResult {
  double surface_j_m2 = 0.0;
  double bottom_j_m2 = 0.0;
};

/// The temperatures of one column and how they change: what the columns' core does side by side,
/// for double.
class ConductionColumn {
 public:
  /// `start_c` has one entry per cell.
  ConductionColumn(ConductionGrid grid, ConductionBottom bottom, std::vector<double> start_c);

  const ConductionGrid& grid() const { return grid_; }
  std::span<const double> cells_c() const { return cells_c_; }
  /// The surface of the column itself, below any cover.
  double surface_c() const { return surface_c_; }
  /// The face that the surface law applies to: the cover's outer face, or the surface.
  double outer_c() const { return outer_c_; }
  double stored_j_m2() const;

  /// Sets the length of the following steps. Error: std::invalid_argument unless above 0.
  void set_step(double step_s);
  /// A massless resistance between the outer face and the surface, m2K/W; 0 for none.
  void set_cover(double resistance_m2k_w) { cover_m2k_w_ = resistance_m2k_w; }

  /// Finds the surface temperature that balances `law` with the present cells; moves no heat.
  void settle_surface(const SurfaceLaw& law);

  /// One step with `source_j_m2` released evenly over it. It has one entry per cell from the top;
  /// cells past its end get none.
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

/// The temperature at a position in a column.
double temperature_at(const ConductionColumn& column, const ProbePlace& place);

}  // namespace slabtide::test
