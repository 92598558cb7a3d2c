#include "slabtide/weather/sky/sun.h"

#include <cmath>
#include <initializer_list>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::at_utc;

namespace {

TimeZone zone(const char* rule) { return *TimeZone::from_posix_rule("a zone", rule).zone; }

const Date midsummer(2026, 6, 21);
const Date midwinter(2026, 12, 21);
constexpr double sydney_like_deg = -33.9;

}  // namespace

TEST_CASE("the sun rises in the east, stands south at noon and sets in the west") {
  CHECK(sun_position(at_utc(midsummer, 6.0), 45.0, 0.0).azimuth_deg < 120.0);
  CHECK(sun_position(at_utc(midsummer, 12.03), 45.0, 0.0).azimuth_deg ==
        doctest::Approx(180.0).epsilon(0.01));
  CHECK(sun_position(at_utc(midsummer, 18.0), 45.0, 0.0).azimuth_deg > 240.0);
}

TEST_CASE("south of the tropics it stands in the north at noon") {
  const double azimuth_deg =
      sun_position(at_utc(midwinter, 2.0), sydney_like_deg, 151.0).azimuth_deg;
  CHECK(std::abs(std::remainder(azimuth_deg, 360.0)) < 15.0);
}

TEST_CASE("the earth is nearest to the sun in January") {
  CHECK(sun_position(at_utc(Date(2026, 1, 3), 0.0), 0.0, 0.0).distance_au ==
        doctest::Approx(0.9833).epsilon(2e-4));
  CHECK(sun_position(at_utc(Date(2026, 7, 6), 0.0), 0.0, 0.0).distance_au ==
        doctest::Approx(1.0166).epsilon(2e-4));
}

TEST_CASE("rise comes before set and both lie about the noon of the civil day") {
  const TimeZone central = zone("CST6CDT,M3.2.0,M11.1.0");
  const Date date(2026, 5, 14);
  const SunTimes times = sun_times(date, central, 44.9, -91.9);
  CHECK(times.kind == SunTimes::Kind::ordinary);
  CHECK(central.local_from_utc(times.rise).date() == date);
  CHECK(central.local_from_utc(times.set).date() == date);
  CHECK(times.rise < times.set);
}

TEST_CASE("the clock does not move the sun") {
  const SunTimes with_dst =
      sun_times(Date(2026, 5, 14), zone("CST6CDT,M3.2.0,M11.1.0"), 44.9, -91.9);
  const SunTimes without = sun_times(Date(2026, 5, 14), zone("CST6"), 44.9, -91.9);
  CHECK(std::abs(seconds_between(with_dst.rise, without.rise)) <= 1.0);
  CHECK(std::abs(seconds_between(with_dst.set, without.set)) <= 1.0);
}

TEST_CASE("a sun that sets after midnight still belongs to the day of its noon") {
  const TimeZone alaska = zone("AKST9AKDT,M3.2.0,M11.1.0");
  const SunTimes times = sun_times(midsummer, alaska, 64.84, -147.7);
  CHECK(times.kind == SunTimes::Kind::ordinary);
  CHECK(alaska.local_from_utc(times.set).date() == Date(2026, 6, 22));
  CHECK(times.rise < times.set);
}

TEST_CASE("polar day and polar night are named") {
  const SunTimes day = sun_times(midsummer, TimeZone(), 75.0, 0.0);
  CHECK(day.kind == SunTimes::Kind::always_up);
  CHECK(seconds_between(day.rise, day.set) == doctest::Approx(86400.0));
  const SunTimes night = sun_times(midwinter, TimeZone(), 75.0, 0.0);
  CHECK(night.kind == SunTimes::Kind::never_up);
  CHECK(night.rise == night.set);
}

TEST_CASE("the poles have a sun too") {
  for (const double latitude_deg : {-90.0, 90.0}) {
    const SunPosition sun = sun_position(at_utc(midsummer, 10.0), latitude_deg, 0.0);
    CHECK(std::isfinite(sun.azimuth_deg));
    CHECK(sun.zenith_deg == doctest::Approx(latitude_deg > 0.0 ? 66.56 : 113.44).epsilon(1e-3));
  }
}

TEST_CASE("the sun refuses places off the globe and times that are none") {
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  const UtcTime midday = at_utc(midsummer, 12.0);
  CHECK_THROWS_AS(sun_position(midday, 90.5, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(sun_position(midday, no_number, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(sun_position(midday, 0.0, no_number), std::invalid_argument);
  CHECK_THROWS_AS(sun_position(UtcTime(), 0.0, 0.0), std::invalid_argument);
}
