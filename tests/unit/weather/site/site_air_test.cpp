#include "weather/site/site_air.h"

#include <doctest/doctest.h>

namespace slabtide {
namespace {

Forecast two_hours() {
  Forecast forecast;
  const UtcTime noon(Date(2026, 5, 14), boost::posix_time::hours(12));
  forecast.hours.resize(2);
  forecast.hours[0].at = noon;
  forecast.hours[0].air_c = 20.0;
  forecast.hours[0].dew_point_c = 19.8;
  forecast.hours[1].at = noon + boost::posix_time::hours(1);
  forecast.hours[1].wind_10m_m_s = 3.0;
  return forecast;
}

TEST_CASE("a cooler site takes the air down, and the dew point no further than the air") {
  const Forecast forecast = at_site(two_hours(), {-0.5, -1.2, 3});
  CHECK(forecast.hours[0].air_c == doctest::Approx(19.5));
  CHECK(forecast.hours[0].dew_point_c == doctest::Approx(19.5));
  CHECK_FALSE(forecast.hours[1].air_c);
  REQUIRE(forecast.notes.size() == 1);
  CHECK(forecast.notes[0] ==
        "air 0.9 °F (0.5 °C) cooler than forecast: 3 pours at this site read it 2.2 °F (1.2 °C) "
        "cooler on average (mix book)");
}

TEST_CASE("a warmer site leaves the dew point") {
  const Forecast forecast = at_site(two_hours(), {0.4, 1.0, 1});
  CHECK(forecast.hours[0].air_c == doctest::Approx(20.4));
  CHECK(forecast.hours[0].dew_point_c == doctest::Approx(19.8));
}

TEST_CASE("next to nothing changes nothing and is not told") {
  const Forecast forecast = at_site(two_hours(), {0.04, 0.1, 1});
  CHECK(forecast.hours[0].air_c == doctest::Approx(20.0));
  CHECK(forecast.notes.empty());
}

}  // namespace
}  // namespace slabtide
