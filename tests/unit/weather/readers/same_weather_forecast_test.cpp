#include <algorithm>
#include <cmath>
#include <string>

#include <doctest/doctest.h>

#include "slabtide/weather/site/weather_series.h"
#include "support/forecast_documents.h"
#include "unit/weather/readers/forecast_test_support.h"
#include "weather/readers/read_forecast.h"

namespace slabtide {
namespace {

/// Floating-point rounding from converting the units and back; the largest disagreement observed is
/// 3.6e-15.
constexpr double rounding = 1e-14;

void check_near(double actual, double expected) { CHECK(std::abs(actual - expected) < rounding); }

WeatherSeries series_of(const std::string& text) {
  const Parsed<Forecast> reading = read_forecast(text, {testing::central_time(), {}});
  REQUIRE_MESSAGE(reading.ok(), testing::told(reading, text));
  CHECK(reading.diagnostics.empty());
  CHECK(reading.value->notes.empty());
  return WeatherSeries::from_forecast(*reading.value).value.value();
}

}  // namespace

TEST_CASE("the same weather in every format gives the same series") {
  const auto hours = test::spring_hours(Date{2026, 5, 14});
  for (const std::string& text :
       {test::as_csv_us(hours), test::as_csv_si(hours), test::as_nws_hourly(hours),
        test::as_nws_grid(hours), test::as_open_meteo(hours)}) {
    CAPTURE(text.substr(0, 90));
    const WeatherSeries series = series_of(text);
    CHECK(series.first() == hours.front().at);
    CHECK(series.last() == hours.back().at);
    for (const test::PlainHour& hour : hours) {
      CAPTURE(hour.at);
      const WeatherSample sample = series.at(hour.at);
      check_near(sample.air_c, hour.air_c);
      check_near(sample.dew_point_c, std::min(hour.dew_point_c, hour.air_c));
      check_near(sample.wind_10m_m_s, hour.wind_m_s);
      check_near(sample.cloud_fraction, hour.cloud_fraction);
    }
  }
}

TEST_CASE("the same chances and thunder in every format") {
  const auto hours = test::spring_hours(Date{2026, 5, 14});
  for (const std::string& text :
       {test::as_csv_us(hours), test::as_csv_si(hours), test::as_nws_hourly(hours),
        test::as_nws_grid(hours), test::as_open_meteo(hours)}) {
    CAPTURE(text.substr(0, 90));
    const auto forecast = read_forecast(text, {testing::central_time(), {}}).value.value();
    REQUIRE(forecast.hours.size() == hours.size());
    // The chance in the last hour cannot be given in a document that gives it for the hour before.
    for (std::size_t i = 0; i + 1 < hours.size(); ++i) {
      CAPTURE(hours[i].at);
      check_near(forecast.hours[i].rain_chance.value(), hours[i].rain_chance);
      CHECK(forecast.hours[i].thunder == hours[i].thunder);
    }
  }
}

}  // namespace slabtide
