#include "slabtide/weather/air/moist_air.h"

#include <initializer_list>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_moist_air {

TEST_CASE("saturation pressure over water meets Hyland & Wexler") {
  struct Row {
    double air_c;
    double pressure_pa;
  };
  constexpr Published saturation{
      .what = "saturation pressure over water",
      .source = "Hyland & Wexler 1983 in ASHRAE Fundamentals, evaluated independently",
      .tolerance = 0.005,
      .unit = "Pa"};
  for (const Row& row : {Row{20.0, 2338.80}, Row{30.0, 4246.03}}) {
    check_row(saturation, fmt::format("{:g} °C", row.air_c), row.pressure_pa,
              saturation_pressure_pa(row.air_c));
  }
}

TEST_CASE("dew point by Magnus") {
  check_row({.what = "dew point by Magnus",
             .source = "Alduchov & Eskridge 1996, evaluated independently",
             .tolerance = 0.005,
             .unit = "°C"},
            "30 °C, 50 %", 18.45, dew_point_from_humidity_c(30.0, 0.5));
}

TEST_CASE("latent heat beside the steam tables") {
  check_row({.what = "latent heat of evaporation",
             .source = "steam tables",
             .status = "from memory",
             .tolerance = 0.05,
             .unit = "kJ/kg"},
            "20 °C", 2453.5, latent_heat_j_kg(20.0) / 1000.0);
}

TEST_CASE("air pressure beside the standard atmosphere") {
  struct Row {
    double elevation_m;
    double pressure_pa;
  };
  constexpr Published atmosphere{.what = "air pressure by elevation",
                                 .source = "ICAO standard atmosphere",
                                 .status = "from memory",
                                 .tolerance = 0.05,
                                 .unit = "Pa"};
  // Remembered to a tenth of a pascal, and at 1500 m to a pascal.
  Published to_the_pascal = atmosphere;
  to_the_pascal.tolerance = 0.5;
  for (const Row& row : {Row{1000.0, 89874.6}, Row{1500.0, 84556.0}, Row{2000.0, 79495.2}}) {
    check_row(row.elevation_m == 1500.0 ? to_the_pascal : atmosphere,
              fmt::format("{:g} m", row.elevation_m), row.pressure_pa,
              air_pressure_pa(row.elevation_m));
  }
}

}  // namespace published_moist_air
