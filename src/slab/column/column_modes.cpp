#include "column_modes.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "slab/material/materials.h"

namespace slabtide {
namespace {

constexpr double soil_under_base_m = 0.3;

constexpr double top_depth_m = 0.005;
constexpr double work_depth_m = 0.020;
constexpr double deep_depth_m = 0.040;

// The smallest orders, ours: with them set times of random pours differ from converged ones by a
// few seconds (tests/properties/slab/converged_test.cpp).
constexpr int min_slab_order = 6;
constexpr int min_ground_order = 3;
/// Of Gauss-Lobatto's points of order n the first lies about this over n squared of the way down.
constexpr double first_point_scale = 3.0;
// Depths at which a profile is told: so many evenly in the slab, the others evenly under it.
constexpr std::size_t profile_slab_points = profile_points / 3;

int order_for(double thickness_m, double spacing_m, int min_order) {
  const double order = std::ceil(std::sqrt(first_point_scale * thickness_m / spacing_m));
  return std::max(min_order, static_cast<int>(order));
}

std::vector<Element> elements_of(const ColumnCase& column, const SolverSettings& settings) {
  std::vector<Element> elements;
  elements.push_back({{column.thickness_m, column.mix->concrete},
                      order_for(column.thickness_m, settings.slab_spacing_m, min_slab_order)});
  if (column.formed_face) return elements;
  const auto add = [&](const Layer& layer) {
    elements.push_back(
        {layer, order_for(layer.thickness_m, settings.ground_spacing_m, min_ground_order)});
  };
  double base_m = 0.0;
  for (const Layer& layer : column.below) {
    add(layer);
    base_m += layer.thickness_m;
  }
  add({std::max(fixed_ground_below_slab_m - base_m, soil_under_base_m), soil_material()});
  return elements;
}

BottomKind bottom_of(const ColumnCase& column) {
  return column.formed_face ? BottomKind::insulated : BottomKind::fixed_temperature;
}

std::vector<double> profile_depths(const ColumnCase& column, double end_m) {
  const std::size_t in_slab = column.formed_face ? profile_points : profile_slab_points;
  std::vector<double> depths_m;
  const auto add = [&depths_m](double top_m, double bottom_m, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
      const double fraction = (static_cast<double>(i) + 0.5) / static_cast<double>(count);
      depths_m.push_back(top_m + fraction * (bottom_m - top_m));
    }
  };
  add(0.0, column.thickness_m, in_slab);
  add(column.thickness_m, end_m, profile_points - in_slab);
  return depths_m;
}

std::array<double, probe_count> probes_of(double thickness_m) {
  const ProbeDepths depths = probe_depths(thickness_m);
  return {depths.top_m, depths.work_m, depths.deep_m, depths.middle_m};
}

void add_times(double factor, const std::vector<double>& values, std::vector<double>& to) {
  to.resize(values.size());
  for (std::size_t i = 0; i < values.size(); ++i) to[i] += factor * values[i];
}

/// The polynomial that is 1 at point `own` and 0 at the others.
double through_others(const std::vector<QuadraturePoint>& points, std::size_t own, double at) {
  double value = 1.0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    if (i != own) value *= (at - points[i].at) / (points[own].at - points[i].at);
  }
  return value;
}

/// The numbers by which the modes of one column differ from those of another.
std::vector<double> what_modes_depend_on(const ColumnCase& column, const SolverSettings& settings) {
  std::vector<double> key{settings.slab_spacing_m, settings.ground_spacing_m,
                          settings.keep_profile ? 1.0 : 0.0, column.formed_face ? 1.0 : 0.0};
  const auto add = [&key](double thickness_m, const ThermalMaterial& of) {
    key.insert(key.end(), {thickness_m, of.conductivity_w_mk, of.heat_capacity_j_m3k});
  };
  add(column.thickness_m, column.mix->concrete);
  for (const Layer& layer : column.below) add(layer.thickness_m, layer.material);
  return key;
}

}  // namespace

ProbeDepths probe_depths(double thickness_m) {
  const double middle_m = 0.5 * thickness_m;
  return {.top_m = std::min(top_depth_m, middle_m),
          .work_m = std::min(work_depth_m, middle_m),
          .deep_m = std::min(deep_depth_m, middle_m),
          .middle_m = middle_m};
}

ColumnModes::ColumnModes(const ColumnCase& column, const SolverSettings& settings)
    : conduction(elements_of(column, settings), bottom_of(column)),
      at_surface(conduction.at(0.0)),
      stored_j_m2(conduction.stored_j_m2()),
      profile_depth_m(profile_depths(column, conduction.depth_m())) {
  const double thickness_m = column.thickness_m;
  const auto probes_m = probes_of(thickness_m);
  for (std::size_t i = 0; i < probe_count; ++i) at_probe[i] = conduction.at(probes_m[i]);
  const auto points = quadrature_over(thickness_m, heat_points);
  double straight = 0.0;  // moment of a line that falls by 1 over the thickness
  for (const QuadraturePoint& point : points) {
    const double arm_m = 0.5 * thickness_m - point.at;
    straight += point.weight * arm_m * arm_m / thickness_m;
  }
  for (std::size_t i = 0; i < heat_points; ++i) {
    const std::vector<double>& here = at_heat[i] = conduction.at(points[i].at);
    heat_thickness_m[i] = points[i].weight;
    add_times(points[i].weight / thickness_m, here, in_mean);
    add_times(points[i].weight * (0.5 * thickness_m - points[i].at) / straight, here, in_gradient);
  }
  // Many enough for the product of that polynomial with any mode.
  const auto close = quadrature_over(thickness_m, static_cast<int>(count() + heat_points));
  for (const QuadraturePoint& point : close) {
    const std::vector<double> here = conduction.at(point.at);
    for (std::size_t i = 0; i < heat_points; ++i) {
      const double fraction = through_others(points, i, point.at);
      add_times(point.weight * fraction / points[i].weight, here, from_heat[i]);
    }
  }
  if (!settings.keep_profile) return;
  for (const double depth_m : profile_depth_m) at_profile.push_back(conduction.at(depth_m));
}

void SharedModes::add(const ColumnCase& column, const SolverSettings& settings) {
  modes_.try_emplace(what_modes_depend_on(column, settings), column, settings);
}

const ColumnModes* SharedModes::find(const ColumnCase& column,
                                     const SolverSettings& settings) const {
  const auto found = modes_.find(what_modes_depend_on(column, settings));
  return found == modes_.end() ? nullptr : &found->second;
}

double rest_c(const ColumnCase& column) {
  return column.formed_face ? column.concrete_c : column.ground_c;
}

std::vector<double> placed_amplitudes(const ColumnCase& column, const ColumnModes& modes) {
  return modes.conduction.amplitudes([&column](std::size_t layer, double depth_m) {
    const double c =
        layer == 0 ? column.concrete_c : ground_at_c(column, depth_m - column.thickness_m);
    return c - rest_c(column);
  });
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

}  // namespace slabtide
