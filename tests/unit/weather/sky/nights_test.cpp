#include "weather/sky/nights.h"

#include <doctest/doctest.h>

#include "slabtide/weather/sky/sun.h"
#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::at_utc;

namespace {

Site site_at(double latitude_deg) {
  Site site;
  site.latitude_deg = latitude_deg;
  return site;
}

}  // namespace

TEST_CASE("a night runs from one day's sunset to the next day's sunrise") {
  const Site site = site_at(45.0);
  const SunTimes today = sun_times(Date(2026, 5, 14), site.time_zone, 45.0, 0.0);
  const SunTimes tomorrow = sun_times(Date(2026, 5, 15), site.time_zone, 45.0, 0.0);
  const auto nights =
      nights_between(at_utc(Date(2026, 5, 14), 12.0), at_utc(Date(2026, 5, 15), 12.0), site);
  REQUIRE(nights.size() == 1);
  CHECK(nights[0].from == today.set);
  CHECK(nights[0].to == tomorrow.rise);
}

TEST_CASE("a night is cut off where the span ends, and none is told of a day") {
  const Site site = site_at(45.0);
  const UtcTime from = at_utc(Date(2026, 5, 14), 23.0);
  const UtcTime to = at_utc(Date(2026, 5, 15), 1.0);
  const auto nights = nights_between(from, to, site);
  REQUIRE(nights.size() == 1);
  CHECK(nights[0].from == from);
  CHECK(nights[0].to == to);
  CHECK(nights_between(at_utc(Date(2026, 5, 14), 9.0), at_utc(Date(2026, 5, 14), 15.0), site)
            .empty());
}

TEST_CASE("beyond the polar circle it is night all day or never") {
  const UtcTime winter = at_utc(Date(2026, 12, 20), 9.0);
  double dark_s = 0.0;
  for (const TimeSpan& night :
       nights_between(winter, after_seconds(winter, 6.0 * 3600.0), site_at(75.0))) {
    dark_s += seconds_between(night.from, night.to);
  }
  CHECK(dark_s == doctest::Approx(6.0 * 3600.0).epsilon(0.01));
  const UtcTime summer = at_utc(Date(2026, 6, 20), 0.0);
  dark_s = 0.0;
  for (const TimeSpan& night :
       nights_between(summer, after_seconds(summer, 24.0 * 3600.0), site_at(75.0))) {
    dark_s += seconds_between(night.from, night.to);
  }
  CHECK(dark_s < 600.0);
}
