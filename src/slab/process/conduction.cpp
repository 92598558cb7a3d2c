#include "conduction.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace slabtide {
namespace {

constexpr double layer_slack = 1.0e-9;  // rounding allowed between layers and faces

void check(std::span<const double> faces_m, std::span<const Layer> layers) {
  if (faces_m.size() < 2 || faces_m.front() != 0.0)
    throw std::invalid_argument("conduction grid: faces start at 0 and bound one cell at least");
  for (std::size_t i = 1; i < faces_m.size(); ++i) {
    if (!(faces_m[i] > faces_m[i - 1]))
      throw std::invalid_argument("conduction grid: faces do not rise");
  }
  double depth_m = 0.0;
  for (const Layer& layer : layers) {
    if (!(layer.thickness_m > 0.0 && layer.material.conductivity_w_mk > 0.0 &&
          layer.material.heat_capacity_j_m3k > 0.0))
      throw std::invalid_argument("conduction grid: a layer has no thickness or no material");
    depth_m += layer.thickness_m;
  }
  if (!(depth_m >= faces_m.back() * (1.0 - layer_slack)))
    throw std::invalid_argument("conduction grid: the layers end above the last face");
}

/// Sum of `amount(material)` times length over the layers between two depths.
template <class Amount>
double over_layers(std::span<const Layer> layers, double from_m, double to_m, Amount amount) {
  double sum = 0.0;
  double top_m = 0.0;
  for (const Layer& layer : layers) {
    const double bottom_m = &layer == &layers.back() ? to_m : top_m + layer.thickness_m;
    const double length_m = std::min(to_m, bottom_m) - std::max(from_m, top_m);
    if (length_m > 0.0) sum += length_m * amount(layer.material);
    top_m += layer.thickness_m;
  }
  return sum;
}

double capacity_j_m2k(std::span<const Layer> layers, double from_m, double to_m) {
  return over_layers(layers, from_m, to_m,
                     [](const ThermalMaterial& m) { return m.heat_capacity_j_m3k; });
}

double conductance_w_m2k(std::span<const Layer> layers, double from_m, double to_m) {
  return 1.0 / over_layers(layers, from_m, to_m,
                           [](const ThermalMaterial& m) { return 1.0 / m.conductivity_w_mk; });
}

}  // namespace

ConductionGrid conduction_grid(std::span<const double> faces_m, std::span<const Layer> layers) {
  check(faces_m, layers);
  ConductionGrid grid;
  double node_m = 0.0;
  for (std::size_t i = 0; i + 1 < faces_m.size(); ++i) {
    const double centre_m = 0.5 * (faces_m[i] + faces_m[i + 1]);
    grid.depth_m.push_back(centre_m);
    grid.thickness_m.push_back(faces_m[i + 1] - faces_m[i]);
    grid.capacity_j_m2k.push_back(capacity_j_m2k(layers, faces_m[i], faces_m[i + 1]));
    grid.conductance_w_m2k.push_back(conductance_w_m2k(layers, node_m, centre_m));
    node_m = centre_m;
  }
  grid.conductance_w_m2k.push_back(conductance_w_m2k(layers, node_m, faces_m.back()));
  return grid;
}

std::vector<double> graded_faces(double from_m, double to_m, int count, double grading) {
  if (!(count > 0 && to_m > from_m && grading >= 0.0))
    throw std::invalid_argument("graded faces: no cells, no length or a negative grading");
  std::vector<double> faces_m;
  for (int i = 0; i <= count; ++i) {
    const double even = static_cast<double>(i) / count;
    const double fraction = grading > 0.0 ? std::expm1(grading * even) / std::expm1(grading) : even;
    faces_m.push_back(i == count ? to_m : from_m + (to_m - from_m) * fraction);
  }
  return faces_m;
}

}  // namespace slabtide
