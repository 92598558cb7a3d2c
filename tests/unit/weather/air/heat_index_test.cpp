#include "weather/air/heat_index.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

double index_f(double air_f, double humidity_percent) {
  return fahrenheit_from_celsius(
      heat_index_c(celsius_from_fahrenheit(air_f), humidity_percent / 100.0));
}

}  // namespace

// The NWS heat index chart, which is rounded to whole degrees; from memory.
TEST_CASE("the heat index is that of the National Weather Service's chart") {
  struct Row {
    double air_f;
    double humidity_percent;
    double index_f;
  };
  for (const Row& row :
       {Row{80, 40, 80}, Row{84, 70, 90}, Row{90, 50, 95}, Row{90, 70, 105}, Row{94, 50, 103},
        Row{96, 50, 108}, Row{100, 40, 109}, Row{88, 80, 106}, Row{104, 40, 119}}) {
    CAPTURE(row.air_f);
    CAPTURE(row.humidity_percent);
    CHECK(std::abs(index_f(row.air_f, row.humidity_percent) - row.index_f) <= 1.01);
  }
}

TEST_CASE("in mild air it is hardly more than the air") {
  CHECK(index_f(70.0, 50.0) == doctest::Approx(70.0).epsilon(0.02));
  CHECK(index_f(60.0, 50.0) == doctest::Approx(60.0).epsilon(0.03));
}

// By hand from the adjustments' formulas.
TEST_CASE("dry air takes off, moist air adds") {
  CHECK(index_f(95.0, 5.0) < index_f(95.0, 13.0) - 2.0);
  CHECK(index_f(82.0, 95.0) > index_f(82.0, 85.0) + 1.0);
}

TEST_CASE("what is no air is refused") {
  CHECK_THROWS_AS(heat_index_c(30.0, 1.1), std::invalid_argument);
  CHECK_THROWS_AS(heat_index_c(std::numeric_limits<double>::quiet_NaN(), 0.5),
                  std::invalid_argument);
}

}  // namespace slabtide
