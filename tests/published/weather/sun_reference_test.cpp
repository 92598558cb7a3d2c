#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "published/weather/reference_rows.h"
#include "slabtide/core/text.h"
#include "slabtide/weather/sky/sun.h"

using namespace slabtide;
using namespace slabtide::test;
using slabtide::testing::reference_rows;
using slabtide::testing::ReferenceRows;

// Against npm astronomy-engine 2.1 (VSOP87, topocentric, own test range 1 arc minute).

namespace {

UtcTime instant(const std::string& text) { return parse_instant(text)->local; }
double number(const std::string& text) { return *parse_number(text); }

constexpr const char* span = "2024 to 2036, within 65° of the equator";

Published astronomy(std::string_view what, double tolerance, std::string_view unit) {
  return {.what = what,
          .source = "astronomy-engine 2.1 (VSOP87)",
          .status = "independent program",
          .tolerance = tolerance,
          .unit = unit};
}

struct Worst {
  double zenith_deg = 0.0;
  double aside_deg = 0.0;  ///< azimuth times the sine of the zenith: the angle on the sky
  double distance_au = 0.0;
};

}  // namespace

TEST_CASE("sun positions of 2024-2036 within 65 deg of the equator") {
  const ReferenceRows rows = reference_rows("sun_positions");
  REQUIRE_MESSAGE(rows.size() >= 2000, "run npm ci in tests/npm");
  Worst worst;
  for (const auto& row : rows) {
    const SunPosition sun = sun_position(instant(row[0]), number(row[1]), number(row[2]));
    const double aside = std::remainder(sun.azimuth_deg - number(row[4]), 360.0) *
                         std::sin(sun.zenith_deg * std::numbers::pi / 180.0);
    worst.zenith_deg = std::max(worst.zenith_deg, std::abs(sun.zenith_deg - number(row[3])));
    worst.aside_deg = std::max(worst.aside_deg, std::abs(aside));
    worst.distance_au = std::max(worst.distance_au, std::abs(sun.distance_au - number(row[5])));
  }
  const std::string positions = fmt::format("{} positions", rows.size());
  check_worst(astronomy("sun's zenith", 0.02, "°"), span, positions, worst.zenith_deg);
  check_worst(astronomy("sun's place aside", 0.02, "°"), span, positions, worst.aside_deg);
  check_worst(astronomy("sun's distance", 0.000125, "au"), span, positions, worst.distance_au);
}

TEST_CASE("sunrise and sunset of 2024-2036 within 65 deg of the equator") {
  const ReferenceRows rows = reference_rows("sun_times");
  REQUIRE_MESSAGE(rows.size() >= 300, "run npm ci in tests/npm");
  double worst_s = 0.0;
  int compared = 0;
  for (const auto& row : rows) {
    if (row[3].empty() || row[4].empty()) continue;
    const SunTimes times =
        sun_times(*parse_date(row[0]), TimeZone(), number(row[1]), number(row[2]));
    REQUIRE(times.kind == SunTimes::Kind::ordinary);
    worst_s = std::max({worst_s, std::abs(seconds_between(instant(row[3]), times.rise)),
                        std::abs(seconds_between(instant(row[4]), times.set))});
    ++compared;
  }
  CHECK(compared >= 300);
  check_worst(astronomy("sunrise and sunset", 10.0, "s"), span, fmt::format("{} days", compared),
              worst_s);
}
