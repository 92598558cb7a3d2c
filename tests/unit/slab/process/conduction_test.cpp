#include "slab/process/conduction.h"

#include <array>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

#include "support/conduction_column.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {

constexpr ThermalMaterial concrete{.conductivity_w_mk = 2.0, .heat_capacity_j_m3k = 2.4e6};
constexpr ThermalMaterial foam{.conductivity_w_mk = 0.04, .heat_capacity_j_m3k = 5.0e4};

struct Held {
  double at_c;
  SurfaceFlux operator()(double outer_c, Stage) const {
    constexpr double h = 1.0e9;
    return {h * (at_c - outer_c), -h};
  }
};

struct NoFlux {
  SurfaceFlux operator()(double, Stage) const { return {}; }
};

ConductionColumn wall(BottomKind bottom, double bottom_c, double start_c) {
  const std::array layers{Layer{0.1, concrete}};
  const std::vector<double> faces_m = graded_faces(0.0, 0.1, 10, 0.0);
  return {conduction_grid(faces_m, layers), {bottom, bottom_c}, std::vector<double>(10, start_c)};
}

}  // namespace

TEST_CASE("graded faces run from end to end and grow") {
  const std::vector<double> faces = graded_faces(0.1, 0.7, 12, 2.0);
  CHECK(faces.size() == 13);
  CHECK(faces.front() == 0.1);
  CHECK(faces.back() == 0.7);
  for (std::size_t i = 2; i < faces.size(); ++i)
    CHECK(faces[i] - faces[i - 1] > faces[i - 1] - faces[i - 2]);
}

TEST_CASE("halving graded cells keeps every face") {
  const std::vector<double> coarse = graded_faces(0.0, 0.1, 8, 2.0);
  const std::vector<double> fine = graded_faces(0.0, 0.1, 16, 2.0);
  for (std::size_t i = 0; i < coarse.size(); ++i) CHECK(fine[2 * i] == doctest::Approx(coarse[i]));
}

TEST_CASE("a layer that ends inside a cell: capacities average, resistances add") {
  const std::array layers{Layer{0.03, concrete}, Layer{0.07, foam}};
  const std::array faces{0.0, 0.02, 0.06, 0.1};
  const ConductionGrid grid = conduction_grid(faces, layers);
  CHECK(grid.capacity_j_m2k[1] == doctest::Approx(0.01 * 2.4e6 + 0.03 * 5.0e4));
  // Centres at 0.01 and 0.04: 0.02 of concrete, 0.01 of foam between them.
  CHECK(1.0 / grid.conductance_w_m2k[1] == doctest::Approx(0.02 / 2.0 + 0.01 / 0.04));
  CHECK(grid.conductance_w_m2k.size() == 4);
}

TEST_CASE("steady heat flow through layers is the sum of resistances") {
  const std::array layers{Layer{0.05, concrete}, Layer{0.05, foam}};
  const std::vector<double> faces = graded_faces(0.0, 0.1, 10, 0.0);
  ConductionColumn column(conduction_grid(faces, layers), {BottomKind::fixed_temperature, 0.0},
                          std::vector<double>(10, 0.0));
  column.set_step(3600.0);
  StepResult last;
  for (int i = 0; i < 200; ++i) last = column.step(Held{10.0}, {});
  const double expected_w_m2 = 10.0 / (0.05 / 2.0 + 0.05 / 0.04);
  CHECK(last.surface_j_m2 / 3600.0 == doctest::Approx(expected_w_m2).epsilon(1e-6));
  CHECK(last.bottom_j_m2 / 3600.0 == doctest::Approx(-expected_w_m2).epsilon(1e-6));
}

TEST_CASE("a cover's resistance counts in a steady flow") {
  ConductionColumn column = wall(BottomKind::fixed_temperature, 0.0, 0.0);
  column.set_cover(0.15);
  column.set_step(3600.0);
  StepResult last;
  for (int i = 0; i < 200; ++i) last = column.step(Held{10.0}, {});
  CHECK(last.surface_j_m2 / 3600.0 == doctest::Approx(10.0 / (0.15 + 0.05)).epsilon(1e-6));
  CHECK(column.outer_c() == doctest::Approx(10.0));
  CHECK(column.surface_c() == doctest::Approx(10.0 - 0.15 * 50.0).epsilon(1e-6));
}

TEST_CASE("a source in a closed wall is stored to the last joule") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const double before = column.stored_j_m2();
  column.set_step(60.0);
  const std::array source{500.0, 100.0};
  for (int i = 0; i < 100; ++i) column.step(NoFlux{}, source);
  CHECK(column.stored_j_m2() - before == doctest::Approx(60000.0).epsilon(1e-10));
}

TEST_CASE("a very long step neither rings nor overshoots") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  column.set_step(1.0e6);
  for (int i = 0; i < 4; ++i) column.step(Held{0.0}, {});
  for (const double c : column.cells_c()) CHECK(std::abs(c) < 1.0e-3);
}

TEST_CASE("halving the step quarters its error") {
  const auto after_half_hour = [](double step_s) {
    ConductionColumn column = wall(BottomKind::fixed_temperature, 20.0, 20.0);
    column.set_step(step_s);
    const int steps = static_cast<int>(std::lround(1800.0 / step_s));
    for (int i = 0; i < steps; ++i) {
      const double t = i * step_s;
      // A flux that increases from zero, so that no step has a jump.
      column.step(
          [&](double, Stage stage) {
            return SurfaceFlux{0.3 * (t + stage_fraction(stage) * step_s), 0.0};
          },
          {});
    }
    return std::vector<double>(column.cells_c().begin(), column.cells_c().end());
  };
  const std::vector<double> exact = after_half_hour(1.0);
  const auto error = [&](double step_s) {
    const std::vector<double> c = after_half_hour(step_s);
    return std::sqrt(std::transform_reduce(c.begin(), c.end(), exact.begin(), 0.0, std::plus<>(),
                                           [](double a, double b) { return (a - b) * (a - b); }));
  };
  const double coarse = error(120.0);
  const double fine = error(60.0);
  MESSAGE("error at 120 s ", coarse, " K, at 60 s ", fine, " K");
  CHECK(coarse / fine == doctest::Approx(4.0).epsilon(0.1));
}

TEST_CASE("Newton's method balances a law with a kink and a fourth power") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const auto law = [](double c, Stage) {
    const double k = c + 273.15;
    const double kinked = c > 25.0 ? 30.0 * (c - 25.0) : 0.0;
    return SurfaceFlux{900.0 - 5.0e-8 * k * k * k * k - kinked,
                       -2.0e-7 * k * k * k - (c > 25.0 ? 30.0 : 0.0)};
  };
  column.settle_surface(law);
  const double inward = column.grid().conductance_w_m2k[0] * (column.surface_c() - 20.0);
  CHECK(law(column.surface_c(), Stage::second).w_m2 == doctest::Approx(inward).epsilon(1e-6));
}

TEST_CASE("what is no column is refused") {
  const std::array layers{Layer{0.1, concrete}};
  CHECK_THROWS_AS(conduction_grid(std::array{0.0, 0.05, 0.2}, layers), std::invalid_argument);
  CHECK_THROWS_AS(conduction_grid(std::array{0.0, 0.05, 0.04}, layers), std::invalid_argument);
  CHECK_THROWS_AS(conduction_grid(std::array{0.01, 0.05}, layers), std::invalid_argument);
  CHECK_THROWS_AS(conduction_grid(std::array{0.0}, layers), std::invalid_argument);
  CHECK_THROWS_AS(conduction_grid(std::array{0.0, 0.1}, std::array{Layer{0.1, {}}}),
                  std::invalid_argument);
  CHECK_THROWS_AS(graded_faces(0.0, 0.1, 0, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(graded_faces(0.1, 0.1, 4, 1.0), std::invalid_argument);
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  CHECK_THROWS_AS(column.set_step(0.0), std::invalid_argument);
  CHECK_THROWS_AS(column.set_step(std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
  CHECK_THROWS_AS(ConductionColumn(column.grid(), {}, {1.0, 2.0}), std::invalid_argument);
}
