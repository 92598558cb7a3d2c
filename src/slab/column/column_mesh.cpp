#include "column_mesh.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "slab/material/materials.h"

namespace slabtide {
namespace {

constexpr double soil_under_base_m = 0.3;

constexpr double top_depth_m = 0.005;
constexpr double work_depth_m = 0.020;
constexpr double deep_depth_m = 0.040;

// Cells grow away from both faces of the slab, where weather and ground change the temperature
// most, and grow more in a thicker slab. Ours: of about thirty gradings tried, the one whose set
// times for a hundred random pours differed least from those of many fine cells.
constexpr double slab_grading = 3.0;
constexpr double usual_slab_m = 0.10;
constexpr double base_weight = 0.5;  // cells at the base are about twice those at the top
constexpr double ground_grading = 3.0;

double grading_for(double thickness_m) {
  return slab_grading + std::max(0.0, std::log(thickness_m / usual_slab_m));
}

/// Faces of `count` cells from 0 to `to_m`, with the finest cells at both ends.
std::vector<double> slab_faces(double to_m, int count) {
  const double grading = grading_for(to_m);
  std::vector<double> faces_m{0.0};
  for (int i = 0; i < count; ++i) {
    const double fraction = (i + 0.5) / count;
    const double width =
        1.0 / (std::exp(-grading * fraction) + base_weight * std::exp(-grading * (1.0 - fraction)));
    faces_m.push_back(faces_m.back() + width);
  }
  const double sum = faces_m.back();
  for (double& face : faces_m) face *= to_m / sum;
  faces_m.back() = to_m;
  return faces_m;
}

std::vector<Layer> layers_of(const ColumnCase& column, double depth_m) {
  std::vector<Layer> layers{{column.thickness_m, column.mix->concrete}};
  double used_m = column.thickness_m;
  for (const Layer& layer : column.below) {
    layers.push_back(layer);
    used_m += layer.thickness_m;
  }
  if (depth_m > used_m) layers.push_back({depth_m - used_m, soil_material()});
  return layers;
}

double ground_depth_m(const ColumnCase& column) {
  double base_m = 0.0;
  for (const Layer& layer : column.below) base_m += layer.thickness_m;
  return std::max(fixed_ground_below_slab_m, base_m + soil_under_base_m);
}

}  // namespace

ProbeDepths probe_depths(double thickness_m) {
  const double middle_m = 0.5 * thickness_m;
  return {.top_m = std::min(top_depth_m, middle_m),
          .work_m = std::min(work_depth_m, middle_m),
          .deep_m = std::min(deep_depth_m, middle_m),
          .middle_m = middle_m};
}

ProbePlace probe_place(const ConductionGrid& grid, double depth_m) {
  const auto below = std::upper_bound(grid.depth_m.begin(), std::prev(grid.depth_m.end()), depth_m);
  const auto node = static_cast<std::size_t>(below - grid.depth_m.begin());
  const double above_m = node == 0 ? 0.0 : grid.depth_m[node - 1];
  return {.above = node, .fraction = (depth_m - above_m) / (*below - above_m)};
}

double ground_at_c(const ColumnCase& column, double below_slab_m) {
  const std::vector<GroundPoint>& ground = column.ground;
  if (ground.empty()) return column.ground_c;
  const auto below = std::upper_bound(
      ground.begin(), ground.end(), below_slab_m,
      [](double depth_m, const GroundPoint& point) { return depth_m < point.depth_m; });
  if (below == ground.begin()) return ground.front().temperature_c;
  if (below == ground.end()) return ground.back().temperature_c;
  const GroundPoint& above = *std::prev(below);
  const double way = (below_slab_m - above.depth_m) / (below->depth_m - above.depth_m);
  return above.temperature_c + way * (below->temperature_c - above.temperature_c);
}

ColumnMesh column_mesh(const ColumnCase& column, const SolverSettings& settings) {
  std::vector<double> faces_m = slab_faces(column.thickness_m, settings.slab_cells);
  ColumnMesh mesh;
  mesh.slab_cells = static_cast<std::size_t>(settings.slab_cells);
  double depth_m = column.thickness_m;
  if (!column.formed_face) {
    depth_m += ground_depth_m(column);
    const std::vector<double> ground_m =
        graded_faces(column.thickness_m, depth_m, settings.ground_cells, ground_grading);
    std::copy(std::next(ground_m.begin()), ground_m.end(), std::back_inserter(faces_m));
    mesh.bottom = {BottomKind::fixed_temperature, column.ground_c};
  }
  mesh.grid = conduction_grid(faces_m, layers_of(column, depth_m));
  return mesh;
}

}  // namespace slabtide
