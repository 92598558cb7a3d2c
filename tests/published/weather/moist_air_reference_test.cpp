#include <algorithm>
#include <cmath>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "published/weather/reference_rows.h"
#include "slabtide/core/text.h"
#include "slabtide/weather/air/moist_air.h"

using namespace slabtide;
using namespace slabtide::test;
using slabtide::testing::reference_rows;
using slabtide::testing::ReferenceRows;

// Against npm psychrolib 1.1 (ASHRAE Fundamentals), dew points above freezing: below, it works
// over ice and Slabtide over water.

namespace {
double number(const std::string& text) { return *parse_number(text); }

Published psychrolib(std::string_view what, double tolerance, std::string_view unit) {
  return {.what = what,
          .source = "psychrolib 1.1 (ASHRAE Fundamentals)",
          .status = "independent program",
          .tolerance = tolerance,
          .unit = unit};
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
    const double share = number(row[1]);
    const double saturation_off = saturation_pressure_pa(air_c) - number(row[2]);
    const double vapour_off = vapour_pressure_pa(number(row[4])) - number(row[3]);
    const double dew_off = dew_point_from_humidity_c(air_c, share) - number(row[4]);
    const double humidity_off = humidity_share(air_c, number(row[4])) - share;
    pressure_pa = std::max(pressure_pa, std::abs(saturation_off));
    vapour_pa = std::max(vapour_pa, std::abs(vapour_off));
    dew_point_c = std::max(dew_point_c, std::abs(dew_off));
    humidity = std::max(humidity, std::abs(humidity_off));
  }
  const std::string states = fmt::format("{} states", rows.size());
  // The same equation, printed to 1e-6; their dew point is printed to 1e-6 °C.
  check_worst(psychrolib("saturation pressure", 1.0e-6, "Pa"), "1 to 50 °C", states, pressure_pa);
  check_worst(psychrolib("vapour pressure", 3.0e-4, "Pa"), "1 to 50 °C", states, vapour_pa);
  // Magnus against Hyland-Wexler.
  check_worst(psychrolib("dew point", 0.06, "°C"), "1 to 50 °C", states, dew_point_c);
  check_worst(psychrolib("relative humidity, share", 0.0015, ""), "1 to 50 °C", states, humidity);
}

TEST_CASE("air pressure by elevation, and how much thinner moist air is there") {
  const ReferenceRows rows = reference_rows("air_pressure");
  REQUIRE_MESSAGE(rows.size() >= 50, "run npm ci in tests/npm");
  double pressure_pa = 0.0;
  double share = 0.0;
  for (const auto& row : rows) {
    const double ours_pa = air_pressure_pa(number(row[0]));
    pressure_pa = std::max(pressure_pa, std::abs(ours_pa - number(row[1])));
    // Density is taken to go as pressure: the vapour, 1.3 kPa of it, is left out of that.
    share = std::max(share, std::abs(ours_pa / sea_level_pressure_pa - number(row[2])));
  }
  const std::string states = fmt::format("{} elevations", rows.size());
  check_worst(psychrolib("air pressure", 1.0e-6, "Pa"), "-400 to 5000 m", states, pressure_pa);
  check_worst(psychrolib("density by pressure, share", 0.003, ""), "-400 to 5000 m", states, share);
}
