#include "slabtide/weather/air/moist_air.h"

#include <initializer_list>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {
constexpr double no_figure = std::numeric_limits<double>::quiet_NaN();
}

TEST_CASE("vapour pressure is the saturation pressure at the dew point") {
  CHECK(vapour_pressure_pa(12.0) == saturation_pressure_pa(12.0));
  CHECK(vapour_pressure_pa(12.0) < saturation_pressure_pa(12.5));
}

TEST_CASE("dew point and humidity are inverse to each other") {
  for (const double air_c : {-20.0, 0.0, 15.0, 40.0}) {
    for (const double fraction : {0.02, 0.3, 0.75, 1.0}) {
      CHECK(humidity_fraction(air_c, dew_point_from_humidity_c(air_c, fraction)) ==
            doctest::Approx(fraction).epsilon(1e-12));
    }
  }
}

TEST_CASE("a dew point above the air counts as saturated") {
  CHECK(humidity_fraction(10.0, 10.5) == 1.0);
}

TEST_CASE("air is thinner uphill and denser below the sea") {
  CHECK(air_pressure_pa(0.0) == 101325.0);
  CHECK(air_pressure_pa(1000.0) < air_pressure_pa(0.0));
  CHECK(air_pressure_pa(-100.0) > air_pressure_pa(0.0));
}

TEST_CASE("moist air refuses what is not a state of air") {
  CHECK_THROWS_AS(saturation_pressure_pa(no_figure), std::invalid_argument);
  CHECK_THROWS_AS(saturation_pressure_pa(-300.0), std::invalid_argument);
  CHECK_THROWS_AS(dew_point_from_humidity_c(20.0, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(dew_point_from_humidity_c(20.0, 1.01), std::invalid_argument);
  CHECK_THROWS_AS(dew_point_from_humidity_c(no_figure, 0.5), std::invalid_argument);
  CHECK_THROWS_AS(humidity_fraction(20.0, no_figure), std::invalid_argument);
  CHECK_THROWS_AS(air_pressure_pa(12000.0), std::invalid_argument);
  CHECK_THROWS_AS(latent_heat_j_kg(no_figure), std::invalid_argument);
}
