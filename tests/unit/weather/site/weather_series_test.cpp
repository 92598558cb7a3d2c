#include "slabtide/weather/site/weather_series.h"

#include <cstddef>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::at_utc;
using slabtide::testing::plain_forecast;

namespace {

const Date date(2026, 5, 14);

UtcTime hour(double h) { return at_utc(date, h); }

WeatherSeries series_of(const Forecast& forecast) {
  const Parsed<WeatherSeries> reading = WeatherSeries::from_forecast(forecast);
  REQUIRE(reading.ok());
  return *reading.value;
}

}  // namespace

TEST_CASE("the series meets the rows and holds its ends") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  forecast.hours[2].air_c = 20.0;
  const WeatherSeries series = series_of(forecast);
  CHECK(series.first() == hour(0.0));
  CHECK(series.last() == hour(5.0));
  CHECK(series.at(hour(2.0)).air_c == doctest::Approx(20.0));
  CHECK(series.at(hour(-3.0)).air_c == doctest::Approx(15.0));
  CHECK(series.at(hour(30.0)).wind_10m_m_s == doctest::Approx(3.0));
}

TEST_CASE("the range is where air, dew point and wind are all known") {
  Forecast forecast = plain_forecast(hour(0.0), 8);
  forecast.hours[0].wind_10m_m_s.reset();
  forecast.hours[7].dew_point_c.reset();
  forecast.hours[6].dew_point_c.reset();
  const WeatherSeries series = series_of(forecast);
  CHECK(series.first() == hour(1.0));
  CHECK(series.last() == hour(5.0));
}

TEST_CASE("each variable runs through its own rows") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  for (const std::size_t i : {1U, 2U, 4U}) forecast.hours[i].wind_10m_m_s.reset();
  forecast.hours[3].wind_10m_m_s = 6.0;
  forecast.hours[5].wind_10m_m_s = 6.0;
  CHECK(series_of(forecast).at(hour(1.5)).wind_10m_m_s == doctest::Approx(4.5));
}

TEST_CASE("the dew point stays at or under the air") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  forecast.hours[3].air_c = 5.0;
  const WeatherSample sample = series_of(forecast).at(hour(3.0));
  CHECK(sample.dew_point_c == sample.air_c);
}

TEST_CASE("rain, its chance and thunder hold from their row to the next") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  forecast.hours[2].rain_mm = 4.0;
  forecast.hours[2].rain_chance = 0.7;
  forecast.hours[2].thunder = true;
  const WeatherSeries series = series_of(forecast);
  CHECK(series.at(hour(1.99)).rain_mm_h == 0.0);
  CHECK(series.at(hour(2.0)).rain_mm_h == doctest::Approx(4.0));
  CHECK(series.at(hour(2.99)).rain_chance == doctest::Approx(0.7));
  CHECK(series.at(hour(2.5)).thunder);
  CHECK(series.at(hour(3.0)).rain_mm_h == 0.0);
  CHECK_FALSE(series.at(hour(3.0)).thunder);
}

TEST_CASE("the rain of rows three hours apart is spread over three hours") {
  Forecast forecast = plain_forecast(hour(0.0), 4, 3.0);
  forecast.hours[1].rain_mm = 6.0;
  CHECK(series_of(forecast).at(hour(5.9)).rain_mm_h == doctest::Approx(2.0));
}

TEST_CASE("irradiance is absent where the forecast has none") {
  Forecast forecast = plain_forecast(hour(0.0), 12);
  CHECK_FALSE(series_of(forecast).at(hour(4.0)).solar_w_m2.has_value());
  forecast.hours[10].solar_w_m2 = 300.0;
  forecast.hours[11].solar_w_m2 = 300.0;
  const WeatherSeries series = series_of(forecast);
  CHECK_FALSE(series.at(hour(8.9)).solar_w_m2.has_value());
  CHECK(series.at(hour(9.5)).solar_w_m2 == doctest::Approx(300.0));
}

TEST_CASE("an hour or two without irradiance is filled, half a day is not") {
  Forecast forecast = plain_forecast(hour(0.0), 24);
  for (const std::size_t i : {6U, 7U, 10U, 23U}) forecast.hours[i].solar_w_m2 = 240.0;
  const WeatherSeries series = series_of(forecast);
  CHECK(series.at(hour(8.5)).solar_w_m2 == doctest::Approx(240.0));
  CHECK_FALSE(series.at(hour(15.0)).solar_w_m2.has_value());
  CHECK(series.at(hour(22.5)).solar_w_m2 == doctest::Approx(240.0));
}

TEST_CASE("a forecast without air, humidity or wind cannot be used") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  for (ForecastHour& row : forecast.hours) row.wind_10m_m_s.reset();
  const Parsed<WeatherSeries> reading = WeatherSeries::from_forecast(forecast);
  CHECK_FALSE(reading.ok());
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].message == "the forecast has no wind");
  CHECK(WeatherSeries::from_forecast(Forecast()).diagnostics.size() == 3);
}

TEST_CASE("six hours between rows are a warning, more is an error") {
  const Parsed<WeatherSeries> coarse =
      WeatherSeries::from_forecast(plain_forecast(hour(0.0), 2, 6.0));
  CHECK(coarse.ok());
  CHECK(coarse.diagnostics.size() == 3);
  Forecast forecast = plain_forecast(hour(0.0), 10);
  for (std::size_t i = 2; i < 9; ++i) forecast.hours[i].air_c.reset();
  const Parsed<WeatherSeries> gap = WeatherSeries::from_forecast(forecast);
  CHECK_FALSE(gap.ok());
  REQUIRE(gap.diagnostics.size() == 1);
  CHECK(gap.diagnostics[0].message ==
        "the forecast has no air temperature for 8 hours, from 2026-05-14T01:00:00+00:00 to "
        "2026-05-14T09:00:00+00:00");
  CHECK_FALSE(gap.diagnostics[0].next_step.empty());
}

TEST_CASE("rows three hours apart pass without a word") {
  CHECK(WeatherSeries::from_forecast(plain_forecast(hour(0.0), 9, 3.0)).diagnostics.empty());
}

TEST_CASE("without clouds the sky is taken as clear, and said") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  for (ForecastHour& row : forecast.hours) row.cloud_fraction.reset();
  const Parsed<WeatherSeries> reading = WeatherSeries::from_forecast(forecast);
  REQUIRE(reading.ok());
  CHECK(reading.value->at(hour(2.0)).cloud_fraction == 0.0);
  REQUIRE(reading.diagnostics.size() == 1);
  CHECK(reading.diagnostics[0].severity == Severity::warning);
}

TEST_CASE("the mean of a straight rise is its middle") {
  Forecast forecast = plain_forecast(hour(0.0), 9);
  for (std::size_t i = 0; i < forecast.hours.size(); ++i)
    forecast.hours[i].air_c = 10.0 + static_cast<double>(i);
  const WeatherSeries series = series_of(forecast);
  CHECK(series.mean_air_c(hour(1.0), hour(5.0)) == doctest::Approx(13.0));
  CHECK(series.mean_air_c(hour(8.0), hour(12.0)) == doctest::Approx(18.0));
  CHECK_THROWS_AS(series.mean_air_c(hour(5.0), hour(5.0)), std::invalid_argument);
}

TEST_CASE("the series refuses rows that readers refuse") {
  Forecast forecast = plain_forecast(hour(0.0), 6);
  forecast.hours[3].at = forecast.hours[2].at;
  CHECK_THROWS_AS(WeatherSeries::from_forecast(forecast), std::invalid_argument);
  forecast = plain_forecast(hour(0.0), 6);
  forecast.hours[3].air_c = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(WeatherSeries::from_forecast(forecast), std::invalid_argument);
}
