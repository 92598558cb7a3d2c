#include "slab/column/column_mesh.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include <doctest/doctest.h>

#include "slab/material/materials.h"
#include "slab/mix/mix_model.h"
#include "support/conduction_column.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::test;
using namespace slabtide::fixtures;

namespace {

struct Made {
  MixModel mix = mix_model(Mix{}, {});
  ColumnMesh mesh;
};

Made make(double thickness_m, double base_m, bool face) {
  Made made;
  ColumnCase column;
  column.thickness_m = thickness_m;
  column.ground_c = 12.0;
  column.mix = &made.mix;
  column.formed_face = face;
  if (base_m > 0.0) column.below = {{base_m, base_material(BaseKind::gravel)}};
  made.mesh = column_mesh(column, SolverSettings{});
  return made;
}

double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

}  // namespace

TEST_CASE("a column holds the slab, its base and soil to 0.6 m under the slab") {
  const Made made = make(0.1, 0.15, false);
  const ConductionGrid& grid = made.mesh.grid;
  CHECK(made.mesh.slab_cells == 12);
  CHECK(grid.cells() == 22);
  CHECK(sum(grid.thickness_m) == doctest::Approx(0.7));
  const double capacity = 0.1 * made.mix.concrete.heat_capacity_j_m3k +
                          0.15 * base_material(BaseKind::gravel).heat_capacity_j_m3k +
                          0.45 * soil_material().heat_capacity_j_m3k;
  CHECK(sum(grid.capacity_j_m2k) == doctest::Approx(capacity));
  CHECK(made.mesh.bottom.kind == BottomKind::fixed_temperature);
  CHECK(made.mesh.bottom.fixed_c == 12.0);
}

TEST_CASE("the ground's temperature runs straight between its points, and stays past them") {
  ColumnCase column;
  column.ground_c = 12.0;
  CHECK(ground_at_c(column, 0.1) == 12.0);
  column.ground = {{0.0, 40.0}, {0.2, 20.0}, {0.6, 10.0}};
  CHECK(ground_at_c(column, 0.0) == 40.0);
  CHECK(ground_at_c(column, 0.05) == doctest::Approx(35.0));
  CHECK(ground_at_c(column, 0.5) == doctest::Approx(12.5));
  CHECK(ground_at_c(column, 0.9) == 10.0);
}

TEST_CASE("a deep base pushes the fixed ground down") {
  CHECK(sum(make(0.1, 0.5, false).mesh.grid.thickness_m) == doctest::Approx(0.1 + 0.8));
}

TEST_CASE("a formed face ends at its middle, insulated") {
  const Made made = make(0.15, 0.1, true);
  CHECK(made.mesh.grid.cells() == 12);
  CHECK(sum(made.mesh.grid.thickness_m) == doctest::Approx(0.15));
  CHECK(made.mesh.bottom.kind == BottomKind::insulated);
}

// The error in set times that these cells cause is limited by
// tests/properties/slab/converged_test.cpp.
TEST_CASE("a slab's cells are finest at its faces, most so at the surface, and under it again") {
  for (const double thickness_m : {0.075, 0.1, 0.2, 0.4}) {
    const auto cells = make(thickness_m, 0.1, false).mesh.grid.thickness_m;
    const auto base = cells.begin() + 12;
    const auto widest = std::max_element(cells.begin(), base);
    CHECK(std::is_sorted(cells.begin(), widest));
    CHECK(std::is_sorted(widest, base, std::greater<>()));
    CHECK(std::is_sorted(base, cells.end()));
    CHECK(cells.front() == *std::min_element(cells.begin(), base));
    CHECK(cells.front() < 0.045 * thickness_m);
  }
}

TEST_CASE("probes lie at 5, 20 and 40 mm and in the middle, never past it") {
  const ProbeDepths usual = probe_depths(0.1);
  CHECK(usual.top_m == doctest::Approx(0.005));
  CHECK(usual.work_m == doctest::Approx(0.020));
  CHECK(usual.deep_m == doctest::Approx(0.040));
  CHECK(usual.middle_m == doctest::Approx(0.050));
  const ProbeDepths thin = probe_depths(0.03);
  CHECK(thin.work_m == doctest::Approx(0.015));
  CHECK(thin.deep_m == doctest::Approx(0.015));
}

TEST_CASE("a straight profile is read exactly at any depth, the surface included") {
  const Made made = make(0.1, 0.1, false);
  std::vector<double> straight_c;
  for (const double depth_m : made.mesh.grid.depth_m) straight_c.push_back(30.0 - 100.0 * depth_m);
  ConductionColumn column(made.mesh.grid, made.mesh.bottom, straight_c);
  const double flux_w_m2 = 100.0 * made.mix.concrete.conductivity_w_mk;
  column.settle_surface([&](double, Stage) { return SurfaceFlux{flux_w_m2, 0.0}; });
  CHECK(column.surface_c() == doctest::Approx(30.0));
  for (const double depth_m : {0.0, 0.0003, 0.005, 0.02, 0.05}) {
    CHECK(temperature_at(column, probe_place(made.mesh.grid, depth_m)) ==
          doctest::Approx(30.0 - 100.0 * depth_m));
  }
}
