#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "core/text.h"
#include "published/published_row.h"
#include "published/weather/reference_rows.h"
#include "slabtide/weather/sky/sun.h"

using namespace slabtide;
using namespace slabtide::test;
using slabtide::testing::reference_rows;
using slabtide::testing::ReferenceRows;

namespace published_sun_reference {

// Compared with npm astronomy-engine 2.1 (VSOP87, topocentric), which states an accuracy of an arc
// minute for angles and none for the distance.

namespace {

UtcTime instant(const std::string& text) { return parse_instant(text)->local; }
double number(const std::string& text) { return *parse_number(text); }

constexpr const char* span = "2024 to 2036, within 65° of the equator";

constexpr double arc_minute_deg = 1.0 / 60.0;

Published astronomy(std::string_view what, double tolerance, std::string_view unit,
                    std::string_view because = "an arc minute, stated by the source") {
  return {.what = what,
          .source = "astronomy-engine 2.1 (VSOP87)",
          .status = "independent program",
          .tolerance = tolerance,
          .unit = unit,
          .because = because};
}

struct Worst {
  double zenith_deg = 0.0;
  double aside_deg = 0.0;  ///< azimuth times the sine of the zenith angle: the angle in the sky
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
  check_worst(astronomy("sun's zenith", arc_minute_deg, "°"), span, positions, worst.zenith_deg);
  check_worst(astronomy("sun's place aside", arc_minute_deg, "°"), span, positions,
              worst.aside_deg);
  check_worst(astronomy("sun's distance", 5.0e-8, "au", "rounding of what it prints"), span,
              positions, worst.distance_au);
}

namespace {

/// The time in which the sun moves by the almanac's arc minute, plus half of its last printed
/// second.
double almanac_s(UtcTime at, double latitude_deg, double longitude_deg) {
  constexpr int half_minute_s = 30;
  constexpr double printed_s = 0.5;
  const boost::posix_time::seconds half(half_minute_s);
  const double before_deg = sun_position(at - half, latitude_deg, longitude_deg).zenith_deg;
  const double after_deg = sun_position(at + half, latitude_deg, longitude_deg).zenith_deg;
  return arc_minute_deg * 2.0 * half_minute_s / std::abs(after_deg - before_deg) + printed_s;
}

/// The event whose disagreement uses up most of the almanac's possible error.
struct Nearest {
  double apart_s = 0.0;
  double allowed_s = 1.0;
  double latest_s = 0.0;  ///< the largest disagreement overall

  void add(double apart, double allowed) {
    latest_s = std::max(latest_s, apart);
    if (apart / allowed > apart_s / allowed_s) {
      apart_s = apart;
      allowed_s = allowed;
    }
  }
};

}  // namespace

TEST_CASE("sunrise and sunset of 2024-2036 within 65 deg of the equator") {
  const ReferenceRows rows = reference_rows("sun_times");
  REQUIRE_MESSAGE(rows.size() >= 300, "run npm ci in tests/npm");
  Nearest nearest;
  int compared = 0;
  for (const auto& row : rows) {
    if (row[3].empty() || row[4].empty()) continue;
    const double latitude_deg = number(row[1]);
    const double longitude_deg = number(row[2]);
    const SunTimes times = sun_times(*parse_date(row[0]), TimeZone(), latitude_deg, longitude_deg);
    REQUIRE(times.kind == SunTimes::Kind::ordinary);
    for (const auto& [theirs, ours] :
         {std::pair{instant(row[3]), times.rise}, std::pair{instant(row[4]), times.set}}) {
      nearest.add(std::abs(seconds_between(theirs, ours)),
                  almanac_s(theirs, latitude_deg, longitude_deg));
    }
    ++compared;
  }
  CHECK(compared >= 300);
  MESSAGE("at most ", nearest.latest_s, " s apart");
  CHECK(nearest.latest_s <= 10.0);  // as sun.h promises
  check_worst(astronomy("sunrise and sunset, nearest to what is allowed", nearest.allowed_s, "s",
                        "its arc minute, as fast as the sun climbs there and then"),
              span, fmt::format("{} days", compared), nearest.apart_s);
}

}  // namespace published_sun_reference
