#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

TEST_CASE("still air leaves the natural part") {
  CHECK(doe2_convection(8.0, 0.0).h_w_m2k == doctest::Approx(2.0 * 9.482 / 6.283));
  CHECK(doe2_convection(-8.0, 0.0).h_w_m2k == doctest::Approx(2.0 * 1.810 / 2.382));
}

TEST_CASE("wind over an even surface is roughened by 1.52") {
  CHECK(forced_convection_w_m2k(1.0) == doctest::Approx(3.26));
  CHECK(forced_convection_w_m2k(4.0) == doctest::Approx(3.26 * std::pow(4.0, 0.89)));
  CHECK(forced_convection_w_m2k(0.0) == 0.0);
  CHECK(doe2_convection(0.0, 5.0).h_w_m2k == doctest::Approx(1.52 * 5.0));
}

TEST_CASE("both parts combine as published") {
  const double natural = 2.0 * 9.482 / 6.283;
  const double glass = std::sqrt(natural * natural + 25.0);
  CHECK(doe2_convection(8.0, 5.0).h_w_m2k == doctest::Approx(natural + 1.52 * (glass - natural)));
}

TEST_CASE("the slope is the derivative") {
  constexpr double dt = 1.0e-5;
  for (const double k : {-20.0, -3.0, 0.5, 12.0}) {
    for (const double forced : {0.0, 4.0, 15.0}) {
      const double slope =
          (doe2_convection(k + dt, forced).h_w_m2k - doe2_convection(k - dt, forced).h_w_m2k) /
          (2.0 * dt);
      CHECK(doe2_convection(k, forced).slope_w_m2k2 == doctest::Approx(slope).epsilon(1e-5));
    }
  }
}

TEST_CASE("no difference and no wind is no convection, not a division by zero") {
  CHECK(doe2_convection(0.0, 0.0).h_w_m2k == 0.0);
  CHECK(doe2_convection(0.0, 0.0).slope_w_m2k2 == 0.0);
}
