#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "properties/weather/in_range.h"
#include "slabtide/weather/site/site_weather.h"
#include "slabtide/weather/site/weather_series.h"
#include "slabtide/weather/sky/sun.h"
#include "support/plain_forecast.h"
#include "weather/sky/irradiance.h"

using namespace slabtide;
using slabtide::testing::at_utc;
using slabtide::testing::in_range;
using slabtide::testing::plain_forecast;

namespace {

const UtcTime start = at_utc(Date(2026, 5, 14), 0.0);

double some_spacing_h() { return *rc::gen::element(1.0, 3.0, 6.0); }

WeatherSeries series_of(const Forecast& forecast) {
  return *WeatherSeries::from_forecast(forecast).value;
}

/// Clear-sky means of the spans that end at the rows, at 45 deg north: by Haurwitz, summed over
/// steps of a minute.
void give_clear_means(Forecast& forecast, double spacing_h) {
  for (ForecastHour& row : forecast.hours) {
    const int steps = static_cast<int>(spacing_h * 60.0);
    double sum = 0.0;
    for (int i = 0; i < steps; ++i) {
      const UtcTime at = after_seconds(row.at, -60.0 * (i + 0.5));
      sum += clear_sky_w_m2(
          std::cos(sun_position(at, 45.0, 0.0).zenith_deg * std::numbers::pi / 180.0));
    }
    row.solar_w_m2 = sum / steps;
  }
}

}  // namespace

TEST_CASE("all the rain of the rows falls, and not a drop more") {
  CHECK(rc::check([] {
    const double spacing_h = some_spacing_h();
    Forecast forecast = plain_forecast(start, 13, spacing_h);
    double given_mm = 0.0;
    for (std::size_t i = 0; i + 1 < forecast.hours.size(); ++i) {
      forecast.hours[i].rain_mm = in_range(0.0, 9.0);
      given_mm += *forecast.hours[i].rain_mm;
    }
    const WeatherSeries series = series_of(forecast);
    double fallen_mm = 0.0;
    const int quarters = static_cast<int>(12.0 * spacing_h) * 4;
    for (int i = 0; i < quarters; ++i)
      fallen_mm += series.at(after_seconds(start, 900.0 * (i + 0.5))).rain_mm_h / 4.0;
    RC_ASSERT(std::abs(fallen_mm - given_mm) < 1e-9);
  }));
}

TEST_CASE("hourly means of the sun are kept on their way to the site") {
  CHECK(rc::check([] {
    const double spacing_h = some_spacing_h();
    Forecast forecast = plain_forecast(start, 9, spacing_h);
    for (ForecastHour& row : forecast.hours) row.solar_w_m2 = in_range(0.0, 900.0);
    Site site;
    site.latitude_deg = in_range(-65.0, 65.0);
    constexpr std::size_t steps_an_hour = 120;
    const auto per_row = static_cast<std::size_t>(spacing_h) * steps_an_hour;
    const SiteWeather weather =
        site_weather(site, series_of(forecast),
                     {.start = after_seconds(start, 15.0), .step_s = 30.0, .count = 8 * per_row});
    for (std::size_t i = 0; i < 8; ++i) {
      double sum = 0.0;
      for (std::size_t k = i * per_row; k < (i + 1) * per_row; ++k)
        sum += weather.beam_horizontal_w_m2[k] + weather.diffuse_w_m2[k];
      RC_ASSERT(std::abs(sum / static_cast<double>(per_row) - *forecast.hours[i + 1].solar_w_m2) <
                0.2);
    }
  }));
}

TEST_CASE("hourly means of a clear day give back its instants") {
  // How far the curve through the means is from the sky they were computed from. Observed: 17.8
  // W/m2 at worst, near sunrise, and 3.4 rms by day for hourly rows.
  Forecast forecast = plain_forecast(start, 25);
  give_clear_means(forecast, 1.0);
  const WeatherSeries series = series_of(forecast);
  double worst = 0.0;
  double square_sum = 0.0;
  int count = 0;
  for (int i = 0; i <= 24 * 12; ++i) {
    const UtcTime at = after_seconds(start, 300.0 * i);
    const double truth =
        clear_sky_w_m2(std::cos(sun_position(at, 45.0, 0.0).zenith_deg * std::numbers::pi / 180.0));
    if (truth <= 0.0) continue;
    const double off = *series.at(at).solar_w_m2 - truth;
    worst = std::max(worst, std::abs(off));
    square_sum += off * off;
    ++count;
  }
  const double rms = std::sqrt(square_sum / count);
  MESSAGE("instants from hourly means: worst ", worst, " W/m2, rms ", rms, " W/m2");
  CHECK(worst <= 18.0);
  CHECK(rms <= 3.5);
}

TEST_CASE("the weather stays within its rows") {
  CHECK(rc::check([] {
    Forecast forecast = plain_forecast(start, 12, some_spacing_h());
    for (ForecastHour& row : forecast.hours) {
      row.air_c = in_range(-10.0, 40.0);
      row.dew_point_c = in_range(-20.0, 25.0);
      row.wind_10m_m_s = in_range(0.0, 15.0);
      row.cloud_fraction = in_range(0.0, 1.0);
    }
    const auto [low, high] = std::ranges::minmax(forecast.hours, {}, &ForecastHour::air_c);
    const WeatherSeries series = series_of(forecast);
    for (int k = 0; k <= 500; ++k) {
      const WeatherSample sample =
          series.at(after_seconds(start, seconds_between(start, series.last()) * k / 500.0));
      RC_ASSERT(sample.air_c >= *low.air_c - 1e-9);
      RC_ASSERT(sample.air_c <= *high.air_c + 1e-9);
      RC_ASSERT(sample.dew_point_c <= sample.air_c);
      RC_ASSERT(sample.wind_10m_m_s >= 0.0);
      RC_ASSERT(sample.cloud_fraction >= 0.0);
      RC_ASSERT(sample.cloud_fraction <= 1.0);
    }
  }));
}
