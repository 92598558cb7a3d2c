#include <algorithm>
#include <cmath>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/text.h"
#include "published/published_row.h"
#include "published/weather/reference_rows.h"
#include "slabtide/weather/air/moist_air.h"

using namespace slabtide;
using namespace slabtide::test;
using slabtide::testing::reference_rows;
using slabtide::testing::ReferenceRows;

namespace published_moist_air_reference {

// Compared with npm psychrolib 1.1 (ASHRAE Fundamentals), for dew points above freezing: below, it
// works over ice and Slabtide over water.

namespace {
double number(const std::string& text) { return *parse_number(text); }

constexpr const char* printed = "rounding of what it prints";
constexpr const char* iterated = "where its search for a dew point ends (from memory)";
constexpr const char* without_vapour =
    "the vapour in moist air, 1.3 kPa, weighs 0.3 % less than dry air";

Published psychrolib(std::string_view what, double tolerance, std::string_view unit,
                     std::string_view because) {
  return {.what = what,
          .source = "psychrolib 1.1 (ASHRAE Fundamentals)",
          .status = "independent program",
          .tolerance = tolerance,
          .unit = unit,
          .because = because};
}
}  // namespace

TEST_CASE("moist air from 1 to 50 °C, dew points above freezing") {
  const ReferenceRows rows = reference_rows("moist_air");
  REQUIRE_MESSAGE(rows.size() >= 500, "run npm ci in tests/npm");
  double pressure_pa = 0.0;
  double vapour_pa = 0.0;
  double dew_point_c = 0.0;
  double humidity = 0.0;
  for (const auto& row : rows) {
    const double air_c = number(row[0]);
    const double fraction = number(row[1]);
    const double saturation_off = saturation_pressure_pa(air_c) - number(row[2]);
    const double vapour_off = vapour_pressure_pa(number(row[4])) - number(row[3]);
    const double dew_off = dew_point_from_humidity_c(air_c, fraction) - number(row[4]);
    const double humidity_off = humidity_fraction(air_c, number(row[4])) - fraction;
    pressure_pa = std::max(pressure_pa, std::abs(saturation_off));
    vapour_pa = std::max(vapour_pa, std::abs(vapour_off));
    dew_point_c = std::max(dew_point_c, std::abs(dew_off));
    humidity = std::max(humidity, std::abs(humidity_off));
  }
  const std::string states = fmt::format("{} states", rows.size());
  const std::string span = "1 to 50 °C";
  check_worst(psychrolib("saturation pressure", 5.0e-7, "Pa", printed), span, states, pressure_pa);
  // For a dew point printed to 1e-6 °C: half of that is 3.1e-4 Pa at 50 °C, where vapour pressure
  // rises by 612 Pa per degree.
  check_worst(psychrolib("vapour pressure", 3.1e-4, "Pa", printed), span, states, vapour_pa);
  check_worst(psychrolib("dew point", 0.001, "°C", iterated), span, states, dew_point_c);
  // 0.001 °C where humidity changes fastest with it, by 0.07 per degree at 1 °C.
  check_worst(psychrolib("relative humidity, share", 7.0e-5, "", iterated), span, states, humidity);
}

TEST_CASE("air pressure by elevation, and how much thinner moist air is there") {
  const ReferenceRows rows = reference_rows("air_pressure");
  REQUIRE_MESSAGE(rows.size() >= 50, "run npm ci in tests/npm");
  double pressure_pa = 0.0;
  double fraction = 0.0;
  for (const auto& row : rows) {
    const double ours_pa = air_pressure_pa(number(row[0]));
    pressure_pa = std::max(pressure_pa, std::abs(ours_pa - number(row[1])));
    // Density is assumed proportional to pressure, leaving out the 1.3 kPa of vapour.
    fraction = std::max(fraction, std::abs(ours_pa / sea_level_pressure_pa - number(row[2])));
  }
  const std::string states = fmt::format("{} elevations", rows.size());
  check_worst(psychrolib("air pressure", 5.0e-7, "Pa", printed), "-400 to 5000 m", states,
              pressure_pa);
  check_worst(psychrolib("density by pressure, share", 0.003, "", without_vapour), "-400 to 5000 m",
              states, fraction);
}

}  // namespace published_moist_air_reference
