#include "slabtide/weather/moist_air.h"

#include <cmath>

#include <doctest/doctest.h>

using namespace slabtide;

// Figures copied from published tables; the disagreement seen stands beside the tolerance.

TEST_CASE("saturation pressure over water meets ASHRAE's Hyland-Wexler values") {
  struct Row {
    double air_c;
    double pressure_pa;
    double tolerance_pa;
    double seen_pa;  // disagreement seen
  };
  // Source: Hyland & Wexler 1983 / ASHRAE Fundamentals, evaluated independently. Published.
  constexpr Row rows[] = {{20.0, 2338.80, 0.005, 0.0037}, {30.0, 4246.03, 0.005, 0.0002}};
  for (const Row& row : rows) {
    const double got = saturation_pressure_pa(row.air_c);
    MESSAGE("saturation at ", row.air_c, " °C: off by ", got - row.pressure_pa, " Pa");
    CHECK(std::abs(got - row.pressure_pa) <= row.tolerance_pa);
  }
}

TEST_CASE("dew point by Magnus") {
  // Coefficients 17.625 and 243.04 (Alduchov & Eskridge 1996), evaluated independently:
  // 30 °C at 50 % gives 18.45 °C. Given to 0.01; seen 0.003 off.
  const double got = dew_point_from_humidity_c(30.0, 0.5);
  MESSAGE("dew point at 30 °C, 50 %: ", got, " °C against 18.45");
  CHECK(std::abs(got - 18.45) <= 0.005);
}

TEST_CASE("latent heat meets the textbook value at 0 °C") {
  // 2500.8 - 2.36 T kJ/kg; from memory. At 20 °C: 2453.6.
  CHECK(latent_heat_j_kg(20.0) == doctest::Approx(2453.6e3).epsilon(1e-12));
}

TEST_CASE("air pressure meets the ICAO standard atmosphere") {
  // ICAO standard atmosphere table, from memory: 89874.6 Pa at 1000 m, 79495.2 at 2000 m. Seen 0.08
  // Pa low.
  struct Row {
    double elevation_m;
    double pressure_pa;
  };
  constexpr Row rows[] = {{1000.0, 89874.6}, {2000.0, 79495.2}};
  for (const Row& row : rows) {
    const double got = air_pressure_pa(row.elevation_m);
    MESSAGE("pressure at ", row.elevation_m, " m: off by ", got - row.pressure_pa, " Pa");
    CHECK(std::abs(got - row.pressure_pa) <= 0.1);
  }
}
