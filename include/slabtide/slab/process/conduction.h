#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "slabtide/slab/material/layer.h"

// One-dimensional conduction through layers, from the surface (depth 0) down. Knows nothing
// of concrete: a surface law and heat sources come from outside.

namespace slabtide {

/// A column cut into cells, the top one first.
struct ConductionGrid {
  std::vector<double> depth_m;         ///< of the cells' centres
  std::vector<double> thickness_m;     ///< of the cells
  std::vector<double> capacity_j_m2k;  ///< of the cells
  /// One more than cells: surface to the first centre, centre to centre, last centre to bottom.
  std::vector<double> conductance_w_m2k;

  std::size_t cells() const { return depth_m.size(); }
};

/// Cells between the given faces (rising from 0) through `layers`, whose sum reaches the last
/// face. A layer may end inside a cell: capacities average, resistances add.
/// Error: std::invalid_argument where faces or layers are not that.
ConductionGrid conduction_grid(std::span<const double> faces_m, std::span<const Layer> layers);

/// Faces of `count` cells from `from_m` to `to_m` that grow away from `from_m`: the last cell
/// is about e^grading times the first. 0 gives even cells.
std::vector<double> graded_faces(double from_m, double to_m, int count, double grading);

/// No heat through the lowest face, or a temperature held there.
enum class BottomKind { insulated, fixed_temperature };

/// The lower end of a column; `fixed_c` where it is held.
struct ConductionBottom {
  BottomKind kind = BottomKind::insulated;
  double fixed_c = 0.0;
};

/// The two stages of a step, at `stage_fraction` of it.
enum class Stage : std::size_t { first = 0, second = 1 };
/// 1 - 1/sqrt 2: makes the two-stage scheme L-stable and of second order.
inline constexpr double stage_gamma = 0.29289321881345254;
constexpr double stage_fraction(Stage stage) { return stage == Stage::first ? stage_gamma : 1.0; }

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

/// Temperatures of a column and the way to move them on.
///
/// Idealises: constant properties; no moisture transport. Finite volumes with a massless
/// surface node, half a cell above the first centre; in time SDIRK2 (Alexander 1977,
/// Diagonally implicit Runge-Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14:
/// two stages, gamma = 1 - 1/sqrt 2, L-stable, second order; published). Both stages share one
/// factored matrix; eliminating from the bottom up leaves one equation for the surface, which
/// takes a nonlinear law by Newton's method. The columns of a batch step the same way, side by
/// side.
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

}  // namespace slabtide
