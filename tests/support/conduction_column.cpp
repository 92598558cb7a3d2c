#include "support/conduction_column.h"

#include <numeric>
#include <stdexcept>
#include <utility>

#include "slab/process/conduction-inl.h"

namespace slabtide::test {

namespace formula = HWY_NAMESPACE;

// Found by its arguments, so not in the namespace below.
static SurfaceFlux select(bool which, const SurfaceFlux& yes, const SurfaceFlux& no) {
  return which ? yes : no;
}

namespace {

class Law {
 public:
  explicit Law(const SurfaceLaw& law) : law_(law) {}
  SurfaceFlux operator()(double outer_c) const { return law_(outer_c); }

 private:
  const SurfaceLaw& law_;
};

}  // namespace

/// What the steps work with, over a column's own numbers.
class ConductionColumn::Rows : public formula::ModeRows<double> {
 public:
  explicit Rows(ConductionColumn& column) {
    modes = column.modes_.count();
    rest_c = column.rest_c_;
    decay_per_s = {const_cast<double*>(column.modes_.decay_per_s().data())};
    at_surface = {column.at_surface_.data()};
    amplitude = {column.amplitudes_.data()};
    double* next = column.work_.data();
    for (auto* row : {&source, &kept, &from_start, &from_end, &from_source}) {
      row->data = next;
      next += modes;
    }
  }
};

ConductionColumn::ConductionColumn(
    std::vector<Element> elements, BottomKind bottom, double rest_c,
    const std::function<double(std::size_t layer, double depth_m)>& start_c)
    : modes_(elements, bottom),
      rest_c_(rest_c),
      at_surface_(modes_.at(0.0)),
      amplitudes_(modes_.amplitudes(
          [&](std::size_t layer, double depth_m) { return start_c(layer, depth_m) - rest_c; })),
      work_(5 * modes_.count()) {
  surface_c_ = outer_c_ = at_c(0.0);
}

double ConductionColumn::at_c(double depth_m) const {
  const std::vector<double> here = modes_.at(depth_m);
  return std::inner_product(here.begin(), here.end(), amplitudes_.begin(), rest_c_);
}

double ConductionColumn::stored_j_m2() const {
  const std::vector<double> each = modes_.stored_j_m2();
  return std::inner_product(each.begin(), each.end(), amplitudes_.begin(), 0.0);
}

void ConductionColumn::set_step(double step_s) {
  if (!(step_s > 0.0)) throw std::invalid_argument("a step is not above 0");
  step_s_ = step_s;
  response_m2k_w_ = formula::prepare_steps(Rows(*this), step_s);
}

void ConductionColumn::settle_surface(const SurfaceLaw& law) {
  formula::SurfaceState<double> surface{cover_m2k_w_, surface_c_, outer_c_, 0.0, 0.0};
  formula::balance(Law(law), surface_c_, cover_m2k_w_, 0.0, surface);
  outer_c_ = surface.outer_c;
  inward_w_m2_ = surface.inward_w_m2;
}

double ConductionColumn::step(const SurfaceLaw& law, std::span<const Source> sources) {
  const Rows rows(*this);
  for (std::size_t m = 0; m < rows.modes; ++m) rows.source.put(m, 0.0);
  for (const Source& each : sources) {
    const std::vector<double> here = modes_.at(each.depth_m);
    for (std::size_t m = 0; m < rows.modes; ++m)
      rows.source.put(m, rows.source[m] + each.w_m2 * here[m]);
  }
  formula::SurfaceState<double> surface{cover_m2k_w_, surface_c_, outer_c_, inward_w_m2_, 0.0};
  const double before_w_m2 = inward_w_m2_;
  formula::step_columns(rows, Law(law), step_s_, response_m2k_w_, surface);
  surface_c_ = surface.surface_c;
  outer_c_ = surface.outer_c;
  inward_w_m2_ = surface.inward_w_m2;
  return 0.5 * step_s_ * (before_w_m2 + inward_w_m2_);
}

std::vector<Element> one_layer(double thickness_m, const ThermalMaterial& material, int order) {
  return {{{thickness_m, material}, order}};
}

}  // namespace slabtide::test
