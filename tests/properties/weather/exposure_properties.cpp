#include <cstddef>
#include <vector>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "properties/weather/in_range.h"
#include "slabtide/weather/site/exposure.h"
#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::at_utc;
using slabtide::testing::in_range;
using slabtide::testing::plain_forecast;
using slabtide::testing::tree;
using slabtide::testing::wall;

namespace {

constexpr double rounding = 1e-9;

SiteWeather some_day() {
  Site site;
  site.latitude_deg = in_range(-65.0, 65.0);
  const UtcTime start = at_utc(Date(2026, 1, 1), 24.0 * *rc::gen::inRange(0, 365));
  Forecast forecast = plain_forecast(start, 25);
  const double cloud = in_range(0.0, 1.0);
  for (ForecastHour& row : forecast.hours) row.cloud_fraction = cloud;
  return site_weather(site, *WeatherSeries::from_forecast(forecast).value,
                      {.start = start, .step_s = 1800.0, .count = 49});
}

Point some_point() { return {in_range(-8.0, 8.0), in_range(-8.0, 8.0)}; }

/// A black one: what a lighter one throws back may be more than what it takes.
Obstacle some_obstacle() {
  const double height_m = in_range(0.0, 8.0);
  const double through = *rc::gen::element(0.0, 0.3, 1.0);
  Obstacle obstacle = *rc::gen::arbitrary<bool>()
                          ? wall(some_point(), some_point(), height_m, through)
                          : tree(some_point(), in_range(0.0, 3.0), height_m, through);
  obstacle.albedo = 0.0;
  return obstacle;
}

std::vector<Obstacle> some_obstacles() {
  std::vector<Obstacle> obstacles(static_cast<std::size_t>(*rc::gen::inRange(0, 6)));
  for (Obstacle& obstacle : obstacles) obstacle = some_obstacle();
  return obstacles;
}

void require_no_more(const CellExposure& less, const CellExposure& more) {
  RC_ASSERT(less.sky_view <= more.sky_view + rounding);
  for (std::size_t i = 0; i < less.shortwave_w_m2.size(); ++i) {
    RC_ASSERT(less.shortwave_w_m2[i] <= more.shortwave_w_m2[i] + rounding);
    RC_ASSERT(less.sunlit_fraction[i] <= more.sunlit_fraction[i] + rounding);
  }
}

void require_not_negative(const CellExposure& cell) {
  RC_ASSERT(cell.sky_view >= 0.0);
  for (std::size_t i = 0; i < cell.shortwave_w_m2.size(); ++i) {
    RC_ASSERT(cell.shortwave_w_m2[i] >= 0.0);
    RC_ASSERT(cell.sunlit_fraction[i] >= 0.0);
  }
}

}  // namespace

TEST_CASE("among black walls and trees a cell gets between nothing and what an open one gets") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const CellExposure cell = expose(some_point(), weather, some_obstacles());
    require_not_negative(cell);
    require_no_more(cell, expose({0.0, 0.0}, weather, {}));
  }));
}

TEST_CASE("one black obstacle more never brings more light") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const Point at = some_point();
    std::vector<Obstacle> obstacles = some_obstacles();
    const CellExposure before = expose(at, weather, obstacles);
    obstacles.push_back(some_obstacle());
    require_no_more(expose(at, weather, obstacles), before);
  }));
}

TEST_CASE("nor to an upright face, which sees half the sky at most") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const Point at = some_point();
    const double facing_deg = in_range(-360.0, 720.0);
    std::vector<Obstacle> obstacles = some_obstacles();
    const CellExposure before = expose_face(at, facing_deg, weather, obstacles);
    RC_ASSERT(before.sky_view <= 0.5 + rounding);
    obstacles.push_back(some_obstacle());
    const CellExposure after = expose_face(at, facing_deg, weather, obstacles);
    require_not_negative(after);
    require_no_more(after, before);
  }));
}

TEST_CASE("a higher black wall never brings more light") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const Point at = some_point();
    Obstacle obstacle = some_obstacle();
    const CellExposure before = expose(at, weather, {obstacle});
    obstacle.height_m += in_range(0.0, 3.0);
    require_no_more(expose(at, weather, {obstacle}), before);
  }));
}

TEST_CASE("a place and its obstacles may be moved together") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const Point at = some_point();
    std::vector<Obstacle> obstacles = some_obstacles();
    const CellExposure here = expose(at, weather, obstacles);
    for (Obstacle& obstacle : obstacles) {
      obstacle.from.x_m += 64.0;
      obstacle.to.x_m += 64.0;
    }
    const CellExposure there = expose({at.x_m + 64.0, at.y_m}, weather, obstacles);
    // A ray that grazes an end may go either way; over the whole sky that matters little.
    RC_ASSERT(std::abs(here.sky_view - there.sky_view) < 0.01);
  }));
}
