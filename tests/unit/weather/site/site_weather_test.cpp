#include "slabtide/weather/site/site_weather.h"

#include <cstddef>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/weather/air/moist_air.h"
#include "support/plain_forecast.h"
#include "weather/sky/sky.h"

using namespace slabtide;
using slabtide::testing::at_utc;
using slabtide::testing::plain_forecast;

namespace {

const UtcTime start = at_utc(Date(2026, 5, 14), 0.0);
constexpr std::size_t noon = 12;

Site somewhere() {
  Site site;
  site.latitude_deg = 45.0;
  site.elevation_m = 300.0;
  site.wind_setting = WindSetting::open_lot;
  return site;
}

SiteWeather hourly(const Forecast& forecast) {
  return site_weather(somewhere(), *WeatherSeries::from_forecast(forecast).value,
                      {.start = start, .step_s = 3600.0, .count = 25});
}

double global_at_noon(const SiteWeather& weather) {
  return weather.beam_horizontal_w_m2[noon] + weather.diffuse_w_m2[noon];
}

}  // namespace

TEST_CASE("the site's air, wind and sky follow from the forecast") {
  Forecast forecast = plain_forecast(start, 25);
  forecast.hours[noon].thunder = true;
  const SiteWeather weather = hourly(forecast);
  CHECK(weather.air_pressure_pa == air_pressure_pa(300.0));
  CHECK(weather.wind_slab_m_s[noon] == doctest::Approx(3.0 * 0.60));
  CHECK(weather.vapour_pressure_pa[noon] == doctest::Approx(vapour_pressure_pa(8.0)));
  CHECK(weather.sky_emissivity[noon] == doctest::Approx(sky_emissivity(8.0, 0.0)));
  CHECK(weather.thunder[noon] == 1);
  CHECK(weather.thunder[noon + 1] == 0);
}

TEST_CASE("every series has an entry an instant") {
  const SiteWeather weather = hourly(plain_forecast(start, 25));
  for (const std::size_t size :
       {weather.air_c.size(), weather.dew_point_c.size(), weather.vapour_pressure_pa.size(),
        weather.wind_slab_m_s.size(), weather.cloud_fraction.size(), weather.sky_emissivity.size(),
        weather.beam_horizontal_w_m2.size(), weather.diffuse_w_m2.size(),
        weather.sun_elevation_deg.size(), weather.sun_azimuth_deg.size(), weather.rain_mm_h.size(),
        weather.rain_chance.size(), weather.thunder.size()})
    CHECK(size == 25);
}

TEST_CASE("the forecast's irradiance beats the clear sky through clouds") {
  Forecast forecast = plain_forecast(start, 25);
  const double clear = global_at_noon(hourly(forecast));
  for (ForecastHour& row : forecast.hours) row.cloud_fraction = 1.0;
  CHECK(global_at_noon(hourly(forecast)) == doctest::Approx(0.25 * clear));
  for (ForecastHour& row : forecast.hours) row.solar_w_m2 = 500.0;
  CHECK(global_at_noon(hourly(forecast)) == doctest::Approx(500.0));
}

TEST_CASE("the sun is up at noon and down at midnight") {
  const SiteWeather weather = hourly(plain_forecast(start, 25));
  CHECK(weather.sun_elevation_deg[noon] > 60.0);
  CHECK(weather.sun_elevation_deg[0] < 0.0);
  CHECK(weather.diffuse_w_m2[0] == 0.0);
}

TEST_CASE("a grid needs a start and a step") {
  const WeatherSeries series = *WeatherSeries::from_forecast(plain_forecast(start, 5)).value;
  CHECK_THROWS_AS(site_weather(somewhere(), series, {.start = start, .step_s = 0.0, .count = 2}),
                  std::invalid_argument);
  CHECK_THROWS_AS(site_weather(somewhere(), series, TimeGrid()), std::invalid_argument);
  CHECK(site_weather(somewhere(), series, {.start = start, .step_s = 60.0, .count = 0})
            .air_c.empty());
}

TEST_CASE("an instant of the grid is found wherever the time lies") {
  const TimeGrid grid{.start = start, .step_s = 300.0, .count = 4};
  CHECK(grid.index_at(0.0) == 0);
  CHECK(grid.index_at(299.0) == 0);
  CHECK(grid.index_at(300.0) == 1);
  CHECK(grid.index_at(900.0) == 3);
  CHECK(grid.index_at(1.0e300) == 3);
  CHECK(grid.index_at(-14400.0) == 0);
  CHECK(grid.index_at(std::numeric_limits<double>::quiet_NaN()) == 0);
  CHECK(grid.index_at(std::numeric_limits<double>::infinity()) == 3);
}

TEST_CASE("a high site has more light from a clear sky, one without elevation is at sea level") {
  const auto at = [](double elevation_m) {
    Site site = somewhere();
    site.elevation_m = elevation_m;
    return site_weather(site, *WeatherSeries::from_forecast(plain_forecast(start, 25)).value,
                        {.start = start, .step_s = 3600.0, .count = 25});
  };
  CHECK(at(0.0).air_pressure_pa == sea_level_pressure_pa);
  const double more = global_at_noon(at(1500.0)) / global_at_noon(at(0.0));
  CHECK(more > 1.005);
  CHECK(more < 1.03);
}
