#include "support/conduction_column.h"

#include <numeric>
#include <stdexcept>
#include <utility>

#include "slab/process/conduction-inl.h"

namespace slabtide::test {
namespace {

namespace formula = HWY_NAMESPACE;

constexpr std::size_t work_rows = 7;

/// A law in the form that the shared formulas need.
struct FormulaLaw {
  const SurfaceLaw& law;

  formula::FluxOf<double> operator()(double outer_c, Stage stage) const {
    const SurfaceFlux flux = law(outer_c, stage);
    return {flux.w_m2, flux.slope_w_m2k};
  }
};

}  // namespace

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

/// The rows of the shared formulas, stored in this column's memory.
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

double temperature_at(const ConductionColumn& column, const ProbePlace& place) {
  const auto cells_c = column.cells_c();
  const double above_c = place.above == 0 ? column.surface_c() : cells_c[place.above - 1];
  return above_c + place.fraction * (cells_c[place.above] - above_c);
}

}  // namespace slabtide::test
