#include "slabtide/weather/site/exposure.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <limits>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::at_utc;
using slabtide::testing::plain_forecast;
using slabtide::testing::wall;

namespace {

/// A clear day at longitude 0, so that noon is near 12 h UTC, with a row every quarter of an hour.
SiteWeather clear_day(double latitude_deg, Date date) {
  Site site;
  site.latitude_deg = latitude_deg;
  const UtcTime start = at_utc(date, 0.0);
  const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(plain_forecast(start, 25));
  return site_weather(site, *series.value, {.start = start, .step_s = 900.0, .count = 97});
}

std::size_t index_at(double hour) { return static_cast<std::size_t>(hour * 4.0); }

const Date equinox(2026, 3, 20);
const Date december(2026, 12, 21);
const Point here{0.0, 0.0};
constexpr double tall_m = 6.0;

const std::vector<Obstacle> to_the_south{wall({-80.0, -2.0}, {80.0, -2.0}, tall_m)};
const std::vector<Obstacle> to_the_north{wall({-80.0, 2.0}, {80.0, 2.0}, tall_m)};
const std::vector<Obstacle> to_the_east{wall({2.0, -80.0}, {2.0, 80.0}, tall_m)};

double noon_fraction(double latitude_deg, Date date, const std::vector<Obstacle>& obstacles) {
  return expose(here, clear_day(latitude_deg, date), obstacles).sunlit_fraction[index_at(12.0)];
}

}  // namespace

TEST_CASE("in the north a wall to the south shades noon, one to the north does not") {
  CHECK(noon_fraction(45.0, equinox, to_the_south) == 0.0);
  CHECK(noon_fraction(45.0, equinox, to_the_north) == 1.0);
}

TEST_CASE("in the south it is the other way round") {
  CHECK(noon_fraction(-45.0, equinox, to_the_south) == 1.0);
  CHECK(noon_fraction(-45.0, equinox, to_the_north) == 0.0);
}

TEST_CASE("a wall to the east shades the morning only, in both hemispheres") {
  for (const double latitude_deg : {45.0, -34.0}) {
    const CellExposure cell = expose(here, clear_day(latitude_deg, equinox), to_the_east);
    CHECK(cell.sunlit_fraction[index_at(8.0)] == 0.0);
    CHECK(cell.sunlit_fraction[index_at(16.0)] == 1.0);
  }
}

TEST_CASE("an open cell gets all the light, a shaded one its share of the sky's") {
  const SiteWeather weather = clear_day(45.0, equinox);
  const CellExposure open = expose(here, weather, {});
  const CellExposure shaded = expose(here, weather, to_the_south);
  const std::size_t noon = index_at(12.0);
  CHECK(open.shortwave_w_m2[noon] ==
        doctest::Approx(weather.beam_horizontal_w_m2[noon] + weather.diffuse_w_m2[noon]));
  // The wall's near side has the sun behind it, and throws nothing back.
  CHECK(shaded.shortwave_w_m2[noon] ==
        doctest::Approx(weather.diffuse_w_m2[noon] * shaded.sky_view));
  CHECK(open.sunlit_fraction.size() == weather.grid.count);
}

TEST_CASE("a white wall in the sun lights up the shade before it") {
  const SiteWeather weather = clear_day(45.0, equinox);
  const std::size_t noon = index_at(12.0);
  std::vector<Obstacle> walls{to_the_south[0], to_the_north[0]};
  const auto light = [&](double albedo) {
    walls[1].albedo = albedo;
    return expose(here, weather, walls).shortwave_w_m2[noon];
  };
  const double seen = 1.0 - expose(here, weather, to_the_north).sky_view;
  // The equinox sun at 45 deg: as much beam on an upright plane as on the level.
  const double on_wall = weather.beam_horizontal_w_m2[noon];
  CHECK(light(0.7) - light(0.0) == doctest::Approx(0.7 * seen * on_wall).epsilon(0.01));
  CHECK(light(0.7) - light(0.0) > 100.0);
}

TEST_CASE("a face that looks at the noon sun takes its beam by the tangent") {
  const SiteWeather weather = clear_day(60.0, equinox);
  const std::size_t noon = index_at(12.0);
  // At the equinox, 60 deg north, the noon sun is at 30 deg: 1/tan 30 deg times as much beam on a
  // vertical plane as on the horizontal.
  const CellExposure south = expose_face(here, 180.0, weather, {});
  CHECK(south.shortwave_w_m2[noon] ==
        doctest::Approx(std::sqrt(3.0) * weather.beam_horizontal_w_m2[noon] +
                        0.5 * weather.diffuse_w_m2[noon])
            .epsilon(0.01));
  const CellExposure north = expose_face(here, 0.0, weather, {});
  CHECK(north.sunlit_fraction[noon] == 0.0);
  CHECK(north.shortwave_w_m2[noon] == doctest::Approx(0.5 * weather.diffuse_w_m2[noon]));
}

TEST_CASE("the wall a face stands against is behind it") {
  const SiteWeather weather = clear_day(45.0, equinox);
  const std::vector<Obstacle> house{wall({-5.0, 0.0}, {5.0, 0.0}, 3.0)};
  const CellExposure face = expose_face(here, 180.0, weather, house);
  CHECK(face.sunlit_fraction[index_at(12.0)] == 1.0);
  CHECK(face.sky_view == doctest::Approx(0.5).epsilon(1e-9));
}

TEST_CASE("a low sun does not set a face alight") {
  // A forecast with 250 W/m2 at daybreak, more than such a low sun can give.
  Site site;
  site.latitude_deg = 45.0;
  const UtcTime start = at_utc(december, 0.0);
  Forecast forecast = plain_forecast(start, 25);
  for (ForecastHour& row : forecast.hours) row.solar_w_m2 = 250.0;
  const SiteWeather weather = site_weather(site, *WeatherSeries::from_forecast(forecast).value,
                                           {.start = start, .step_s = 900.0, .count = 97});
  const CellExposure face = expose_face(here, 130.0, weather, {});
  CHECK(*std::ranges::max_element(face.shortwave_w_m2) < 1361.0 * 1.04 + 250.0);
}

TEST_CASE("a place without direct sun has its share of the sky light") {
  const SiteWeather weather = clear_day(45.0, equinox);
  const CellExposure place = expose_shaded(0.6, weather);
  CHECK(place.shortwave_w_m2[index_at(10.0)] ==
        doctest::Approx(0.6 * weather.diffuse_w_m2[index_at(10.0)]));
  CHECK(std::ranges::max(place.sunlit_fraction) == 0.0);
  CHECK_THROWS_AS(expose_shaded(1.1, weather), std::invalid_argument);
  CHECK_THROWS_AS(expose_shaded(std::numeric_limits<double>::quiet_NaN(), weather),
                  std::invalid_argument);
}
