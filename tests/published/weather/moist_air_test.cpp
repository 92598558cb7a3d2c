#include "slabtide/weather/moist_air.h"

#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

using namespace slabtide;

// The disagreement seen when a row was written stands beside its tolerance.

TEST_CASE("saturation pressure over water meets Hyland & Wexler") {
  struct Row {
    double air_c;
    double pressure_pa;
    double tolerance_pa;  // half the last digit given; seen 0.0037 and 0.0002
  };
  // Source: Hyland & Wexler 1983, ASHRAE Fundamentals, evaluated independently. Published.
  for (const Row& row : {Row{20.0, 2338.80, 0.005}, Row{30.0, 4246.03, 0.005}}) {
    const double off_pa = saturation_pressure_pa(row.air_c) - row.pressure_pa;
    MESSAGE("saturation at ", row.air_c, " °C: off by ", off_pa, " Pa");
    CHECK(std::abs(off_pa) <= row.tolerance_pa);
  }
}

TEST_CASE("dew point by Magnus") {
  // Alduchov & Eskridge 1996 coefficients, evaluated independently: published. Given to
  // 0.01 °C; seen 0.003.
  const double off_c = dew_point_from_humidity_c(30.0, 0.5) - 18.45;
  MESSAGE("dew point at 30 °C, 50 %: off by ", off_c, " °C");
  CHECK(std::abs(off_c) <= 0.005);
}

TEST_CASE("latent heat of the textbook") {
  // 2500.8 - 2.36 T kJ/kg, from memory; tests the coding. Steam tables, from memory, give
  // 2453.5 kJ/kg at 20 °C: seen 0.1 off.
  const double off_kj_kg = latent_heat_j_kg(20.0) / 1000.0 - 2453.5;
  MESSAGE("latent heat at 20 °C: off by ", off_kj_kg, " kJ/kg");
  CHECK(std::abs(off_kj_kg) <= 0.2);
}

TEST_CASE("air pressure meets the standard atmosphere") {
  struct Row {
    double elevation_m;
    double pressure_pa;
    double tolerance_pa;  // seen 0.08 in both
  };
  // Source: ICAO standard atmosphere tables, from memory.
  for (const Row& row : {Row{1000.0, 89874.6, 0.1}, Row{2000.0, 79495.2, 0.1}}) {
    const double off_pa = air_pressure_pa(row.elevation_m) - row.pressure_pa;
    MESSAGE("pressure at ", row.elevation_m, " m: off by ", off_pa, " Pa");
    CHECK(std::abs(off_pa) <= row.tolerance_pa);
  }
}
