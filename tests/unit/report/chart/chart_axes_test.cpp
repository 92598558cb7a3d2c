#include "report/chart/chart_axes.h"

#include <stdexcept>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

TEST_CASE("values find their places, and stay on the chart") {
  const AxisScale straight(AxisScale::Kind::straight, 10, 20, 100, 0);
  CHECK(straight.place(10) == 100.0);
  CHECK(straight.place(12.5) == doctest::Approx(75.0));
  CHECK(straight.place(30) == 0.0);
  const AxisScale logarithmic(AxisScale::Kind::logarithmic, 1, 10000, 0, 40);
  CHECK(logarithmic.place(100) == doctest::Approx(20.0));
  CHECK(logarithmic.place(0) == 0.0);
  CHECK_THROWS_AS(AxisScale(AxisScale::Kind::straight, 1, 1, 0, 1), std::invalid_argument);
  CHECK_THROWS_AS(AxisScale(AxisScale::Kind::logarithmic, 0, 1, 0, 1), std::invalid_argument);
}

TEST_CASE("ticks are round, and not too many") {
  CHECK(round_ticks(0.0, 100.0, 6) == std::vector<double>{0, 20, 40, 60, 80, 100});
  CHECK(round_ticks(51.0, 98.0, 6) == std::vector<double>{60, 70, 80, 90});
  CHECK(round_ticks(-3.0, 3.0, 4) == std::vector<double>{-2, 0, 2});
  const auto small = round_ticks(0.0, 0.22, 6);
  REQUIRE(small.size() == 5);
  CHECK(small[1] == doctest::Approx(0.05));
  CHECK(decimals_of(small) == 2);
  CHECK(decimals_of({0, 20, 40}) == 0);
  CHECK(decimals_of({0.0, 0.5}) == 1);
  CHECK_THROWS_AS(round_ticks(1.0, 1.0, 6), std::invalid_argument);
}

TEST_CASE("a logarithmic axis has its decades") {
  CHECK(decade_ticks(1.0, 10000.0) == std::vector<double>{1, 10, 100, 1000, 10000});
  const auto si = decade_ticks(0.0069, 68.9);
  REQUIRE(si.size() == 4);
  CHECK(si.front() == doctest::Approx(0.01));
  CHECK_THROWS_AS(decade_ticks(0.0, 1.0), std::invalid_argument);
}

}  // namespace
}  // namespace slabtide
