#include "weather/forecast/curve.h"

#include <limits>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("a curve meets its points and holds its ends") {
  const Curve curve = monotone_curve({0.0, 1.0, 2.0, 4.0, 5.0}, {1.0, 3.0, 2.0, 2.0, 7.0});
  CHECK(curve(0.0) == 1.0);
  CHECK(curve(1.0) == doctest::Approx(3.0));
  CHECK(curve(5.0) == 7.0);
  CHECK(curve(-10.0) == 1.0);
  CHECK(curve(10.0) == 7.0);
  CHECK(curve(3.0) == doctest::Approx(2.0));
}

TEST_CASE("two or three points make straight lines, one a level") {
  const Curve two = monotone_curve({0.0, 2.0}, {1.0, 5.0});
  CHECK(two(0.5) == doctest::Approx(2.0));
  CHECK(two(3.0) == 5.0);
  const Curve three = monotone_curve({0.0, 2.0, 3.0}, {1.0, 5.0, 4.0});
  CHECK(three(2.0) == doctest::Approx(5.0));
  CHECK(three(2.25) == doctest::Approx(4.75));
  CHECK(monotone_curve({7.0}, {3.0})(100.0) == 3.0);
}

TEST_CASE("a flow passes from span to span without a jump") {
  const Curve flow = mean_keeping_curve({0.0, 1.0, 2.0, 5.0}, {100.0, 300.0, 200.0});
  for (const double edge : {1.0, 2.0})
    CHECK(flow(edge - 1e-9) == doctest::Approx(flow(edge + 1e-9)).epsilon(1e-6));
  CHECK(flow(1.0) == doctest::Approx(200.0));
}

TEST_CASE("a flow that stops is nothing from there on") {
  const Curve flow = mean_keeping_curve({0.0, 1.0, 2.0, 3.0}, {50.0, 0.0, 0.0});
  CHECK(flow(1.0) == 0.0);
  CHECK(flow(1.5) == 0.0);
  CHECK(flow(9.0) == 0.0);
}

TEST_CASE("curves refuse rows that are out of order, short or not numbers") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(monotone_curve({}, {}), std::invalid_argument);
  CHECK_THROWS_AS(monotone_curve({0.0, 1.0}, {0.0}), std::invalid_argument);
  CHECK_THROWS_AS(monotone_curve({0.0, 0.0}, {0.0, 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(monotone_curve({0.0, not_a_number}, {0.0, 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(monotone_curve({0.0, 1.0}, {0.0, not_a_number}), std::invalid_argument);
  CHECK_THROWS_AS(mean_keeping_curve({0.0, 1.0}, {}), std::invalid_argument);
  CHECK_THROWS_AS(mean_keeping_curve({0.0, 1.0}, {-1.0}), std::invalid_argument);
  CHECK_THROWS_AS(mean_keeping_curve({0.0}, {1.0}), std::invalid_argument);
}
