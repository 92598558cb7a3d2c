#include "slabtide/slab/process/conduction.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <stdexcept>
#include <utility>

#include "slab/process/conduction-inl.h"

namespace slabtide {
namespace {

namespace formula = HWY_NAMESPACE;

constexpr std::size_t work_rows = 7;

/// A law as the shared formulas ask it.
struct FormulaLaw {
  const SurfaceLaw& law;

  formula::FluxOf<double> operator()(double outer_c, Stage stage) const {
    const SurfaceFlux flux = law(outer_c, stage);
    return {flux.w_m2, flux.slope_w_m2k};
  }
};

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

ConductionColumn::ConductionColumn(ConductionGrid grid, ConductionBottom bottom,
                                   std::vector<double> start_c)
    : grid_(std::move(grid)), bottom_(bottom), cells_c_(std::move(start_c)) {
  const std::size_t n = grid_.cells();
  if (n == 0 || cells_c_.size() != n)
    throw std::invalid_argument("conduction column: not one temperature a cell");
  conductance_w_m2k_ = grid_.conductance_w_m2k;
  if (bottom_.kind == BottomKind::insulated) conductance_w_m2k_.back() = 0.0;
  work_.assign(work_rows * n, 0.0);
  surface_c_ = outer_c_ = cells_c_.front();
}

double ConductionColumn::stored_j_m2() const {
  return std::transform_reduce(cells_c_.begin(), cells_c_.end(), grid_.capacity_j_m2k.begin(), 0.0);
}

/// The rows of the shared formulas, in this column's memory.
class ConductionColumn::Rows : public formula::ConductionRows<double> {
 public:
  explicit Rows(ConductionColumn& column) {
    cells = column.cells_c_.size();
    capacity_j_m2k = {column.grid_.capacity_j_m2k.data()};
    conductance_w_m2k = {column.conductance_w_m2k_.data()};
    cells_c = {column.cells_c_.data()};
    bottom_c = column.bottom_.fixed_c;
    const auto row = [this, &column](std::size_t i) {
      return formula::Row<double>{column.work_.data() + i * cells};
    };
    stage_c = row(0);
    rate_w_m2k = row(1);
    inverse = row(2);
    from_above = row(3);
    from_below = row(4);
    source_w_m2 = row(5);
    eliminated_c = row(6);
  }
};

void ConductionColumn::set_step(double step_s) {
  if (!(step_s > 0.0)) throw std::invalid_argument("conduction column: a step of no length");
  if (step_s == step_s_) return;
  step_s_ = step_s;
  formula::factor(Rows(*this), step_s);
}

void ConductionColumn::settle_surface(const SurfaceLaw& law) {
  formula::SurfaceState<double> surface{cover_m2k_w_, surface_c_, outer_c_, 0.0, 0.0};
  formula::settle_surface(Rows(*this), FormulaLaw{law}, surface);
  surface_c_ = surface.surface_c;
  outer_c_ = surface.outer_c;
}

StepResult ConductionColumn::step(const SurfaceLaw& law, std::span<const double> source_j_m2) {
  const Rows rows(*this);
  for (std::size_t i = 0; i < source_j_m2.size(); ++i) {
    rows.source_w_m2.put(i, source_j_m2[i] / step_s_);
  }
  formula::SurfaceState<double> surface{cover_m2k_w_, surface_c_, outer_c_, 0.0, 0.0};
  const auto moved = formula::step_columns(rows, FormulaLaw{law}, step_s_, surface);
  surface_c_ = surface.surface_c;
  outer_c_ = surface.outer_c;
  return {moved.surface_j_m2, moved.bottom_j_m2};
}

}  // namespace slabtide
