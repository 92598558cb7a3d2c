#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/slab/material/layer.h"

// One-dimensional conduction through layers, from the surface (depth 0) down. Independent of
// concrete: the surface law and heat sources are passed in.

namespace slabtide {

/// A column divided into cells, the top one first.
struct ConductionGrid {
  std::vector<double> depth_m;         ///< of the cells' centres
  std::vector<double> thickness_m;     ///< of the cells
  std::vector<double> capacity_j_m2k;  ///< of the cells
  /// One more than the cells: surface to first centre, centre to centre, last centre to bottom.
  std::vector<double> conductance_w_m2k;

  std::size_t cells() const { return depth_m.size(); }
};

/// Cells between the given faces (increasing from 0) through `layers`, whose total thickness
/// reaches the last face. A layer may end inside a cell: capacities are averaged, resistances
/// added. Error: std::invalid_argument if faces or layers are not like that.
ConductionGrid conduction_grid(std::span<const double> faces_m, std::span<const Layer> layers);

/// Faces of `count` cells from `from_m` to `to_m` that grow away from `from_m`: the last cell
/// is about e^grading times the first. 0 gives even cells.
std::vector<double> graded_faces(double from_m, double to_m, int count, double grading);

/// Whether the bottom face passes no heat or is held at a temperature.
enum class BottomKind { insulated, fixed_temperature };

/// The lower end of a column; `fixed_c` is the temperature held.
struct ConductionBottom {
  BottomKind kind = BottomKind::insulated;
  double fixed_c = 0.0;
};

/// The two stages of a step, at `stage_fraction` of it.
enum class Stage : std::size_t { first = 0, second = 1 };
/// 1 - 1/sqrt 2: makes the two-stage scheme L-stable and of second order.
inline constexpr double stage_gamma = 0.29289321881345254;
constexpr double stage_fraction(Stage stage) { return stage == Stage::first ? stage_gamma : 1.0; }

}  // namespace slabtide
