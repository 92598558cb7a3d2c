#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/slab/layer.h"

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

enum class BottomKind { insulated, fixed_temperature };

struct ConductionBottom {
  BottomKind kind = BottomKind::insulated;
  double fixed_c = 0.0;
};

/// The two stages of a step, at `stage_share` of it.
enum class Stage : std::size_t { first = 0, second = 1 };
/// 1 - 1/sqrt 2: makes the two-stage scheme L-stable and of second order.
inline constexpr double stage_gamma = 0.29289321881345254;
constexpr double stage_share(Stage stage) { return stage == Stage::first ? stage_gamma : 1.0; }

/// Heat into the column at the surface, and its slope over the surface temperature. The result
/// of a surface law; a law may return a struct of its own with these two members and more.
struct SurfaceFlux {
  double w_m2 = 0.0;
  double slope_w_m2k = 0.0;
};

/// What a step moved: heat into the column, J/m2, and the surface law's result at each stage.
template <class Flux>
struct StepResult {
  double surface_j_m2 = 0.0;
  double bottom_j_m2 = 0.0;
  std::array<Flux, 2> stages{};
};

/// Temperatures of a column and the way to move them on.
///
/// Idealises: constant properties; no moisture transport. Finite volumes with a massless
/// surface node, half a cell above the first centre; in time SDIRK2 (Alexander 1977,
/// Diagonally implicit Runge-Kutta methods for stiff O.D.E.'s, SIAM J. Numer. Anal. 14:
/// two stages, gamma = 1 - 1/sqrt 2, L-stable, second order; published). Both stages share one
/// factored matrix; eliminating from the bottom up leaves one equation for the surface, which
/// takes a nonlinear law by Newton's method.
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
  /// `law(outer_c, stage)` returns a SurfaceFlux or the like, falling with temperature.
  template <class Law>
  auto settle_surface(const Law& law) {
    const double conductance = grid_.conductance_w_m2k[0];
    return balance(law, Stage::second, {conductance * cells_c_[0], conductance});
  }

  /// One step with `source_j_m2` released evenly over it, one entry a cell from the top;
  /// cells past its end have none.
  template <class Law>
  auto step(const Law& law, std::span<const double> source_j_m2) {
    StepResult<decltype(law(0.0, Stage::first))> result;
    begin_step(source_j_m2);
    result.stages[0] = stage(law, Stage::first, (1.0 - stage_gamma) * step_s_, result);
    between_stages();
    result.stages[1] = stage(law, Stage::second, stage_gamma * step_s_, result);
    return result;
  }

 private:
  /// Heat into the column for a surface temperature T: slope T - offset.
  struct Response {
    double offset_w_m2;
    double slope_w_m2k;
  };

  void begin_step(std::span<const double> source_j_m2);
  void between_stages();
  Response eliminate();
  void substitute();
  double bottom_w_m2() const;

  template <class Law, class Result>
  auto stage(const Law& law, Stage which, double weight_s, Result& result) {
    const auto flux = balance(law, which, eliminate());
    substitute();
    result.surface_j_m2 += weight_s * inward_w_m2_;
    result.bottom_j_m2 += weight_s * bottom_w_m2();
    return flux;
  }

  /// Newton's method on law(T) = (slope T - offset)/(1 + cover slope).
  template <class Law>
  auto balance(const Law& law, Stage which, Response response) {
    constexpr int most_rounds = 30;
    constexpr double close_enough_k = 1.0e-6;
    const double covered = 1.0 / (1.0 + cover_m2k_w_ * response.slope_w_m2k);
    const double slope = response.slope_w_m2k * covered;
    const double offset = response.offset_w_m2 * covered;
    auto flux = law(outer_c_, which);
    for (int round = 0; round < most_rounds; ++round) {
      const double change = (flux.w_m2 - (slope * outer_c_ - offset)) / (slope - flux.slope_w_m2k);
      outer_c_ += change;
      if (std::abs(change) < close_enough_k) break;
      flux = law(outer_c_, which);
    }
    inward_w_m2_ = slope * outer_c_ - offset;
    surface_c_ = outer_c_ - cover_m2k_w_ * inward_w_m2_;
    return flux;
  }

  ConductionGrid grid_;
  ConductionBottom bottom_;
  std::vector<double> cells_c_;
  std::vector<double> start_c_;      // of the step
  std::vector<double> base_c_;       // what the stage departs from
  std::vector<double> source_w_m2_;  // of the step
  std::vector<double> rate_w_m2k_;   // capacity over (gamma step)
  std::vector<double> inverse_;      // of the eliminated diagonal
  std::vector<double> from_above_;   // share of the neighbour above, after elimination
  std::vector<double> from_below_;   // weight of the neighbour's eliminated right side
  std::vector<double> eliminated_c_;
  double step_s_ = 0.0;
  double cover_m2k_w_ = 0.0;
  double surface_c_ = 0.0;
  double outer_c_ = 0.0;
  double inward_w_m2_ = 0.0;
};

}  // namespace slabtide
