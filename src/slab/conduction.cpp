#include "slabtide/slab/conduction.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

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
    const double share = grading > 0.0 ? std::expm1(grading * even) / std::expm1(grading) : even;
    faces_m.push_back(i == count ? to_m : from_m + (to_m - from_m) * share);
  }
  return faces_m;
}

ConductionColumn::ConductionColumn(ConductionGrid grid, ConductionBottom bottom,
                                   std::vector<double> start_c)
    : grid_(std::move(grid)), bottom_(bottom), cells_c_(std::move(start_c)) {
  const std::size_t n = grid_.cells();
  if (n == 0 || cells_c_.size() != n)
    throw std::invalid_argument("conduction column: not one temperature a cell");
  for (std::vector<double>* each : {&start_c_, &base_c_, &source_w_m2_, &rate_w_m2k_, &inverse_,
                                    &from_above_, &from_below_, &eliminated_c_})
    each->assign(n, 0.0);
  surface_c_ = outer_c_ = cells_c_.front();
}

double ConductionColumn::stored_j_m2() const {
  double sum = 0.0;
  for (std::size_t i = 0; i < cells_c_.size(); ++i) sum += grid_.capacity_j_m2k[i] * cells_c_[i];
  return sum;
}

void ConductionColumn::set_step(double step_s) {
  if (!(step_s > 0.0)) throw std::invalid_argument("conduction column: a step of no length");
  if (step_s == step_s_) return;
  step_s_ = step_s;
  const std::size_t n = cells_c_.size();
  const std::vector<double>& g = grid_.conductance_w_m2k;
  for (std::size_t i = n; i-- > 0;) {
    const bool last = i + 1 == n;
    rate_w_m2k_[i] = grid_.capacity_j_m2k[i] / (stage_gamma * step_s);
    const double below = last && bottom_.kind == BottomKind::insulated ? 0.0 : g[i + 1];
    const double eliminated = last ? 0.0 : g[i + 1] * from_above_[i + 1];
    inverse_[i] = 1.0 / (rate_w_m2k_[i] + g[i] + below - eliminated);
    from_above_[i] = g[i] * inverse_[i];
    from_below_[i] = below * inverse_[i];
  }
}

void ConductionColumn::begin_step(std::span<const double> source_j_m2) {
  start_c_ = cells_c_;
  base_c_ = cells_c_;
  for (std::size_t i = 0; i < source_j_m2.size(); ++i) source_w_m2_[i] = source_j_m2[i] / step_s_;
}

/// The second stage departs from start + (1 - gamma) step dT/dt(first stage).
void ConductionColumn::between_stages() {
  constexpr double weight = (1.0 - stage_gamma) / stage_gamma;
  for (std::size_t i = 0; i < cells_c_.size(); ++i)
    base_c_[i] = start_c_[i] + weight * (cells_c_[i] - start_c_[i]);
}

/// From the bottom up: each cell as eliminated + from_above times the node above it.
ConductionColumn::Response ConductionColumn::eliminate() {
  const std::size_t n = cells_c_.size();
  for (std::size_t i = 0; i < n; ++i)
    eliminated_c_[i] = (rate_w_m2k_[i] * base_c_[i] + source_w_m2_[i]) * inverse_[i];
  double below_c = bottom_.fixed_c;  // its weight is 0 where the bottom is insulated
  for (std::size_t i = n; i-- > 0;) {
    eliminated_c_[i] += from_below_[i] * below_c;
    below_c = eliminated_c_[i];
  }
  const double g = grid_.conductance_w_m2k[0];
  return {g * eliminated_c_[0], g * (1.0 - from_above_[0])};
}

void ConductionColumn::substitute() {
  double above_c = surface_c_;
  for (std::size_t i = 0; i < cells_c_.size(); ++i) {
    above_c = eliminated_c_[i] + from_above_[i] * above_c;
    cells_c_[i] = above_c;
  }
}

double ConductionColumn::bottom_w_m2() const {
  if (bottom_.kind == BottomKind::insulated) return 0.0;
  return grid_.conductance_w_m2k.back() * (bottom_.fixed_c - cells_c_.back());
}

}  // namespace slabtide
