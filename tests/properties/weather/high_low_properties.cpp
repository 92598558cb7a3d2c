#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "properties/weather/in_range.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "slabtide/weather/site/weather_series.h"
#include "weather/forecast/high_low_curve.h"

using namespace slabtide;
using slabtide::testing::in_range;

namespace {

HighLowSpan some_span() {
  const double low_c = in_range(-10.0, 20.0);
  const double rise_h = in_range(3.0, 9.0);
  return {.rise_h = rise_h,
          .set_h = rise_h + in_range(4.0, 20.0),
          .next_rise_h = rise_h + 24.0,
          .low_c = low_c,
          .high_c = low_c + in_range(0.0, 20.0),
          .next_low_c = low_c + in_range(-10.0, 10.0)};
}

}  // namespace

TEST_CASE("the curve starts at its low, ends at the next and never tops the high") {
  CHECK(rc::check([] {
    const HighLowSpan span = some_span();
    RC_PRE(span.next_low_c <= span.high_c);
    const double from = low_hour(span.rise_h);
    const double to = low_hour(span.next_rise_h);
    RC_ASSERT(std::abs(high_low_air_c(span, from) - span.low_c) < 1e-9);
    RC_ASSERT(std::abs(high_low_air_c(span, to) - span.next_low_c) < 1e-9);
    for (int k = 0; k <= 100; ++k) {
      const double air_c = high_low_air_c(span, std::min(to, from + (to - from) * k / 100.0));
      RC_ASSERT(air_c <= span.high_c + 1e-9);
      RC_ASSERT(air_c >= std::min(span.low_c, span.next_low_c) - 1e-9);
    }
  }));
}

TEST_CASE("sunset does not make the air jump") {
  CHECK(rc::check([] {
    const HighLowSpan span = some_span();
    RC_ASSERT(std::abs(high_low_air_c(span, span.set_h) - high_low_air_c(span, span.set_h + 1e-6)) <
              1e-3);
  }));
}

TEST_CASE("a typed day anywhere on earth, in any season, makes a usable forecast") {
  CHECK(rc::check([] {
    TypedWeather weather;
    weather.low_c = in_range(-30.0, 25.0);
    weather.high_c = weather.low_c + in_range(0.0, 25.0);
    weather.wind_10m_m_s = in_range(0.0, 15.0);
    Site site;
    site.latitude_deg = in_range(-90.0, 90.0);
    site.longitude_deg = in_range(-180.0, 180.0);
    const Date date = Date(2026, 1, 1) + boost::gregorian::days(*rc::gen::inRange(0, 365));
    const Forecast forecast = high_low_forecast(weather, site, date);
    const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(forecast);
    RC_ASSERT(series.ok());
    RC_ASSERT(series.diagnostics.empty());
    for (const ForecastHour& row : forecast.hours) {
      RC_ASSERT(*row.air_c >= weather.low_c - 1e-9);
      RC_ASSERT(*row.air_c <= weather.high_c + 1e-9);
      RC_ASSERT(*row.dew_point_c <= *row.air_c);
      RC_ASSERT(*row.wind_10m_m_s >= 0.0);
    }
  }));
}
