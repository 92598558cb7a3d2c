#include "slabtide/weather/site/weather_errors.h"

#include <cmath>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/weather/air/moist_air.h"
#include "support/plain_forecast.h"

namespace slabtide {
namespace {

/// A day with half the sky cloudy at 45 N.
SiteWeather cloudy_day() {
  Forecast forecast = testing::plain_forecast(UtcTime(Date(2026, 5, 14)), 25);
  for (ForecastHour& hour : forecast.hours) hour.cloud_fraction = 0.5;
  const WeatherSeries series = WeatherSeries::from_forecast(forecast).value.value();
  Site site;
  site.latitude_deg = 45.0;
  return site_weather(site, series, {UtcTime(Date(2026, 5, 14)), 300.0, 288});
}

constexpr std::size_t noon = 144;

TEST_CASE("no errors leave the weather as it is") {
  const SiteWeather weather = cloudy_day();
  const SiteWeather same = with_errors(weather, {});
  CHECK(same.air_c == weather.air_c);
  CHECK(same.vapour_pressure_pa == weather.vapour_pressure_pa);
  CHECK(same.beam_horizontal_w_m2 == weather.beam_horizontal_w_m2);
  CHECK(same.sky_emissivity == weather.sky_emissivity);
}

TEST_CASE("errors grow with the hours since the forecast was issued, up to four times") {
  // By hand: 1 + 0.02 x (10 + 5) = 1.3; 1 + 0.02 x 300 is over 4.
  const WeatherErrors errors{.air_k = 1.0, .lead_at_start_h = 10.0, .growth_per_h = 0.02};
  CHECK(error_growth(errors, 5.0) == doctest::Approx(1.3));
  CHECK(error_growth(errors, 290.0) == doctest::Approx(4.0));
  CHECK(error_growth({.lead_at_start_h = -50.0, .growth_per_h = 0.02}, 5.0) ==
        doctest::Approx(1.0));
}

TEST_CASE("air, dew point and wind move by their errors") {
  const SiteWeather weather = cloudy_day();
  const SiteWeather off =
      with_errors(weather, {.air_k = 2.0, .dew_point_k = -1.0, .wind_log = std::log(1.5)});
  CHECK(off.air_c[noon] == doctest::Approx(weather.air_c[noon] + 2.0));
  CHECK(off.dew_point_c[noon] == doctest::Approx(weather.dew_point_c[noon] - 1.0));
  CHECK(off.vapour_pressure_pa[noon] ==
        doctest::Approx(vapour_pressure_pa(weather.dew_point_c[noon] - 1.0)));
  CHECK(off.wind_slab_m_s[noon] == doctest::Approx(1.5 * weather.wind_slab_m_s[noon]));
}

TEST_CASE("the night's air has an error beside the day's, which comes in as the sun goes") {
  const SiteWeather weather = cloudy_day();
  const WeatherErrors errors{.air_k = 1.0, .night_air_k = -3.0};
  constexpr std::size_t midnight = 0;
  CHECK(weather.sun_elevation_deg[midnight] < -10.0);
  CHECK(weather.sun_elevation_deg[noon] > 10.0);
  CHECK(air_error_k(errors, weather, noon) == doctest::Approx(1.0));
  CHECK(air_error_k(errors, weather, midnight) == doctest::Approx(-2.0));
  const SiteWeather off = with_errors(weather, errors);
  CHECK(off.air_c[midnight] == doctest::Approx(weather.air_c[midnight] - 2.0));
  std::size_t dawn = 0;
  while (weather.sun_elevation_deg[dawn] < 0.0) ++dawn;
  CHECK(air_error_k(errors, weather, dawn) == doctest::Approx(-0.5).epsilon(0.1));
}

TEST_CASE("the site's shelter does not grow with the forecast's age, the wind's error does") {
  const SiteWeather weather = cloudy_day();
  const WeatherErrors errors{
      .wind_log = 0.1, .wind_ratio_log = 0.3, .lead_at_start_h = 38.0, .growth_per_h = 0.02};
  CHECK(wind_error_log(errors, weather, noon) == doctest::Approx(2.0 * 0.1 + 0.3));
  const SiteWeather off = with_errors(weather, errors);
  CHECK(off.wind_slab_m_s[noon] == doctest::Approx(std::exp(0.5) * weather.wind_slab_m_s[noon]));
  // The wind at 10 m, which reports tell, is off by its own error alone.
  CHECK(off.wind_slab_m_s[noon] / off.wind_ratio ==
        doctest::Approx(std::exp(0.2) * weather.wind_slab_m_s[noon] / weather.wind_ratio));
}

TEST_CASE("the dew point stays at the air, cloud within the sky") {
  const SiteWeather damp = with_errors(cloudy_day(), {.air_k = -10.0, .cloud_fraction = 2.0});
  CHECK(damp.dew_point_c[noon] == damp.air_c[noon]);
  CHECK(damp.cloud_fraction[noon] == 1.0);
}

TEST_CASE("sunlight goes with the cloud") {
  const SiteWeather weather = cloudy_day();
  const auto global = [](const SiteWeather& w) {
    return w.beam_horizontal_w_m2[noon] + w.diffuse_w_m2[noon];
  };
  // Kasten & Czeplak 1980 (published): 1 - 0.75 N^3.4 is 0.92896 for N 0.5 and 0.25 for N 1.
  const SiteWeather overcast = with_errors(weather, {.cloud_fraction = 0.5});
  CHECK(global(overcast) == doctest::Approx(global(weather) * 0.25 / 0.92896).epsilon(1e-4));
  const SiteWeather clear = with_errors(weather, {.cloud_fraction = -0.5});
  CHECK(global(clear) == doctest::Approx(global(weather) / 0.92896).epsilon(1e-4));
}

TEST_CASE("a place relit sees what it would have seen under the other weather") {
  const SiteWeather weather = cloudy_day();
  const SiteWeather other = with_errors(weather, {.cloud_fraction = 0.3});
  const std::vector<Obstacle> house{testing::wall({-5.0, 3.0}, {5.0, 3.0}, 6.0)};
  const CellExposure was = expose({0.0, 0.0}, weather, house);
  const CellExposure is = expose({0.0, 0.0}, other, house);
  const CellExposure by_relit = relit(was, weather, other);
  const CellExposure face = expose_face({0.0, 0.0}, 180.0, weather, {});
  const CellExposure face_is = expose_face({0.0, 0.0}, 180.0, other, {});
  const CellExposure face_relit = relit(face, weather, other);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    CHECK(by_relit.shortwave_w_m2[i] == doctest::Approx(is.shortwave_w_m2[i]).epsilon(1e-9));
    CHECK(face_relit.shortwave_w_m2[i] == doctest::Approx(face_is.shortwave_w_m2[i]).epsilon(1e-9));
  }
  CHECK(is.shortwave_w_m2[noon] < was.shortwave_w_m2[noon]);
}

TEST_CASE("errors that are no figures, and grids that differ, are refused") {
  const SiteWeather weather = cloudy_day();
  CHECK_THROWS_AS(with_errors(weather, {.air_k = std::numeric_limits<double>::quiet_NaN()}),
                  std::invalid_argument);
  const CellExposure open = expose({0.0, 0.0}, weather, {});
  CHECK_THROWS_AS(relit(open, weather, first_instants(weather, 10)), std::invalid_argument);
}

}  // namespace
}  // namespace slabtide
