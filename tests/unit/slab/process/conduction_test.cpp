#include "slab/process/conduction.h"

#include <array>
#include <cmath>
#include <limits>
#include <numeric>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

#include "slab/process/conduction-inl.h"
#include "support/conduction_column.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {

constexpr ThermalMaterial concrete{.conductivity_w_mk = 2.0, .heat_capacity_j_m3k = 2.4e6};
constexpr ThermalMaterial foam{.conductivity_w_mk = 0.04, .heat_capacity_j_m3k = 5.0e4};

/// Behind a film.
struct Film {
  double at_c;
  double w_m2k = 20.0;
  SurfaceFlux operator()(double outer_c) const { return {w_m2k * (at_c - outer_c), -w_m2k}; }
};

SurfaceFlux no_flux(double) { return {}; }

ConductionColumn wall(BottomKind bottom, double bottom_c, double start_c) {
  return {one_layer(0.1, concrete, 6), bottom, bottom_c,
          [start_c](std::size_t, double) { return start_c; }};
}

double integral(const std::vector<QuadraturePoint>& points, int power) {
  return std::accumulate(points.begin(), points.end(), 0.0,
                         [power](double sum, const QuadraturePoint& p) {
                           return sum + p.weight * std::pow(p.at, power);
                         });
}

}  // namespace

// Gauss-Legendre on n points is exact for polynomials up to the order 2n - 1: any textbook.
TEST_CASE("quadrature with four points is exact for a power of seven, not of eight") {
  const auto points = quadrature_over(2.0, 4);
  CHECK(points.size() == 4);
  for (const int power : {0, 1, 3, 7}) {
    CHECK(integral(points, power) ==
          doctest::Approx(std::pow(2.0, power + 1) / (power + 1)).epsilon(1e-12));
  }
  CHECK(std::abs(integral(points, 8) - std::pow(2.0, 9) / 9) > 1e-3);
}

// The zeros of cos(x): an insulated face above, a fixed one below.
TEST_CASE("the slowest modes of a wall fade as the closed form says") {
  const double diffusivity = 2.0 / 2.4e6;
  const ConductionModes fixed(one_layer(0.1, concrete, 8), BottomKind::fixed_temperature);
  CHECK(fixed.count() == 8);
  for (const int k : {0, 1}) {
    const double per_m = (k + 0.5) * M_PI / 0.1;
    CHECK(fixed.decay_per_s()[static_cast<std::size_t>(k)] ==
          doctest::Approx(diffusivity * per_m * per_m).epsilon(1e-4));
  }
  const ConductionModes closed(one_layer(0.1, concrete, 8), BottomKind::insulated);
  CHECK(closed.count() == 9);
  CHECK(closed.decay_per_s()[0] < 1e-15);
  CHECK(closed.decay_per_s()[1] == doctest::Approx(diffusivity * M_PI * M_PI / 0.01).epsilon(1e-4));
}

TEST_CASE("a straight profile is read exactly at any depth, its ends included") {
  const std::array elements{Element{{0.05, concrete}, 4}, Element{{0.05, foam}, 3}};
  const ConductionColumn column({elements.begin(), elements.end()}, BottomKind::fixed_temperature,
                                20.0, [](std::size_t, double x) { return 30.0 - 100.0 * x; });
  for (const double x : {0.0, 0.0003, 0.02, 0.05, 0.07, 0.1})
    CHECK(column.at_c(x) == doctest::Approx(30.0 - 100.0 * x));
}

TEST_CASE("where layers meet at different temperatures no heat is lost or made") {
  const std::array elements{Element{{0.05, concrete}, 4}, Element{{0.05, foam}, 3}};
  const ConductionColumn column({elements.begin(), elements.end()}, BottomKind::insulated, 10.0,
                                [](std::size_t layer, double) { return layer == 0 ? 30.0 : 15.0; });
  CHECK(column.stored_j_m2() ==
        doctest::Approx(0.05 * 2.4e6 * 20.0 + 0.05 * 5.0e4 * 5.0).epsilon(1e-12));
}

TEST_CASE("steady heat flow through layers is the sum of resistances") {
  const std::array elements{Element{{0.05, concrete}, 4}, Element{{0.05, foam}, 3}};
  ConductionColumn column({elements.begin(), elements.end()}, BottomKind::fixed_temperature, 0.0,
                          [](std::size_t, double) { return 0.0; });
  column.set_step(3600.0);
  for (int i = 0; i < 200; ++i) column.step(Film{10.0});
  CHECK(column.inward_w_m2() ==
        doctest::Approx(10.0 / (1.0 / 20.0 + 0.05 / 2.0 + 0.05 / 0.04)).epsilon(1e-9));
}

TEST_CASE("a cover's resistance counts in a steady flow") {
  ConductionColumn column = wall(BottomKind::fixed_temperature, 0.0, 0.0);
  column.set_cover(0.15);
  column.set_step(3600.0);
  for (int i = 0; i < 200; ++i) column.step(Film{10.0});
  const double w_m2 = 10.0 / (0.05 + 0.15 + 0.05);
  CHECK(column.inward_w_m2() == doctest::Approx(w_m2).epsilon(1e-9));
  CHECK(column.outer_c() == doctest::Approx(10.0 - 0.05 * w_m2));
  CHECK(column.surface_c() == doctest::Approx(10.0 - 0.2 * w_m2));
}

TEST_CASE("a source in a closed wall is stored to the last joule") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const double before = column.stored_j_m2();
  column.set_step(60.0);
  const std::array sources{Source{0.01, 300.0}, Source{0.07, 100.0}};
  for (int i = 0; i < 100; ++i) column.step(no_flux, sources);
  CHECK(column.stored_j_m2() - before == doctest::Approx(400.0 * 6000.0).epsilon(1e-10));
}

TEST_CASE("what comes in through the surface of a closed wall is stored to the last joule") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const double before = column.stored_j_m2();
  double in_j_m2 = 0.0;
  for (const double step_s : {17.0, 120.0, 600.0}) {
    column.set_step(step_s);
    for (int i = 0; i < 20; ++i) in_j_m2 += column.step(Film{45.0});
  }
  CHECK(column.stored_j_m2() - before == doctest::Approx(in_j_m2).epsilon(1e-10));
}

TEST_CASE("long steps in a gale neither ring nor overshoot") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const Film gale{0.0, 80.0};
  column.settle_surface(gale);
  column.set_step(1200.0);  // twice the solver's
  double before_c = 20.0;
  for (int i = 0; i < 60; ++i) {
    column.step(gale);
    CHECK(column.surface_c() > 0.0);
    CHECK(column.surface_c() < before_c);
    before_c = column.surface_c();
  }
  CHECK(before_c < 0.01);
}

TEST_CASE("halving the step quarters its error") {
  const auto after_half_hour = [](double step_s) {
    ConductionColumn column = wall(BottomKind::fixed_temperature, 20.0, 20.0);
    column.set_step(step_s);
    const int steps = static_cast<int>(std::lround(1800.0 / step_s));
    for (int i = 1; i <= steps; ++i) {
      // Air that warms ever faster, from the wall's own temperature.
      const double h = i * step_s / 1800.0;
      column.step(Film{20.0 + 10.0 * h * h});
    }
    return std::array{column.surface_c(), column.at_c(0.02), column.at_c(0.08)};
  };
  const auto exact = after_half_hour(1.0);
  const auto error = [&](double step_s) {
    const auto c = after_half_hour(step_s);
    double sum = 0.0;
    for (std::size_t i = 0; i < c.size(); ++i) sum += (c[i] - exact[i]) * (c[i] - exact[i]);
    return std::sqrt(sum);
  };
  const double coarse = error(120.0);
  const double fine = error(60.0);
  MESSAGE("error at 120 s ", coarse, " K, at 60 s ", fine, " K");
  CHECK(coarse / fine == doctest::Approx(4.0).epsilon(0.1));
}

TEST_CASE("Newton's method balances a law with a kink and a fourth power") {
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  const auto law = [](double c) {
    const double k = c + 273.15;
    const double kinked = c > 25.0 ? 30.0 * (c - 25.0) : 0.0;
    return SurfaceFlux{900.0 - 5.0e-8 * k * k * k * k - kinked,
                       -2.0e-7 * k * k * k - (c > 25.0 ? 30.0 : 0.0)};
  };
  column.set_cover(0.1);
  column.settle_surface(law);
  CHECK(law(column.outer_c()).w_m2 ==
        doctest::Approx((column.outer_c() - 20.0) / 0.1).epsilon(1e-5));
  CHECK(column.inward_w_m2() == doctest::Approx((column.outer_c() - 20.0) / 0.1).epsilon(1e-9));
}

TEST_CASE("what fades is exact for slow and fast alike") {
  for (const double x : {0.0, 1e-9, 1e-4, 0.3, 0.4999, 0.5001, 2.0, 40.0, 1e5}) {
    const auto found = HWY_NAMESPACE::fading(x);
    // The integrals by their closed forms in long double; by their series where those cancel.
    const auto l = static_cast<long double>(x);
    const long double mean = x < 1e-3 ? 1.0L - l / 2 + l * l / 6 : -std::expm1(-l) / l;
    const long double late = x < 1e-3 ? 0.5L - l / 6 + l * l / 24 : (1.0L - mean) / l;
    // The series leaves out its eleventh term, 0.5^10 2/12!.
    constexpr double by_series = 1e-11;
    CHECK(std::abs(found.kept - std::exp(-x)) < by_series);
    CHECK(found.mean == doctest::Approx(static_cast<double>(mean)).epsilon(by_series));
    CHECK(found.late == doctest::Approx(static_cast<double>(late)).epsilon(by_series));
  }
}

TEST_CASE("what is no column is refused") {
  using Bottom = BottomKind;
  CHECK_THROWS_AS(ConductionModes({}, Bottom::insulated), std::invalid_argument);
  CHECK_THROWS_AS(ConductionModes(one_layer(0.1, {}, 4), Bottom::insulated), std::invalid_argument);
  CHECK_THROWS_AS(ConductionModes(one_layer(0.0, concrete, 4), Bottom::insulated),
                  std::invalid_argument);
  CHECK_THROWS_AS(ConductionModes(one_layer(0.1, concrete, 0), Bottom::insulated),
                  std::invalid_argument);
  CHECK_THROWS_AS(quadrature_over(1.0, 0), std::invalid_argument);
  ConductionColumn column = wall(BottomKind::insulated, 0.0, 20.0);
  CHECK_THROWS_AS(column.set_step(0.0), std::invalid_argument);
  CHECK_THROWS_AS(column.set_step(std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
}
