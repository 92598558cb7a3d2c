#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <vector>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "properties/weather/in_range.h"
#include "slabtide/weather/site/exposure.h"
#include "support/plain_forecast.h"
#include "weather/sky/shade.h"

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

// What is thrown back, without any of the ways in which it is worked out quicker.
namespace {

constexpr double degree = std::numbers::pi / 180.0;
constexpr int directions = 360;

/// Distance along a level ray from the place; infinite if it misses.
double ray_m(Point at, const Obstacle& o, double azimuth_deg) {
  constexpr double misses = std::numeric_limits<double>::infinity();
  const Point ray{std::sin(azimuth_deg * degree), std::cos(azimuth_deg * degree)};
  const Point from{o.from.x_m - at.x_m, o.from.y_m - at.y_m};
  if (o.kind == ObstacleKind::tree) {
    const double ahead = ray.x_m * from.x_m + ray.y_m * from.y_m;
    const double aside = ray.x_m * from.y_m - ray.y_m * from.x_m;
    if (ahead < 0.0 || std::abs(aside) > o.radius_m) return misses;
    return ahead - std::sqrt(o.radius_m * o.radius_m - aside * aside);
  }
  const Point span{o.to.x_m - o.from.x_m, o.to.y_m - o.from.y_m};
  const double turn = ray.x_m * span.y_m - ray.y_m * span.x_m;
  const double ahead = (from.x_m * span.y_m - from.y_m * span.x_m) / turn;
  const double along = (from.x_m * ray.y_m - from.y_m * ray.x_m) / turn;
  return ahead >= 0.0 && along >= 0.0 && along <= 1.0 ? ahead : misses;
}

/// Of the light from all round, how much each obstacle stands in: in each direction the highest.
std::vector<double> fractions_slowly(Point at, const std::vector<Obstacle>& obstacles) {
  std::vector<double> fractions(obstacles.size());
  for (int i = 0; i < directions && !obstacles.empty(); ++i) {
    std::vector<double> slopes;
    for (const Obstacle& o : obstacles) slopes.push_back(o.height_m / ray_m(at, o, i + 0.5));
    const auto highest = std::max_element(slopes.begin(), slopes.end());
    const double elevation = std::atan(*highest);
    fractions[static_cast<std::size_t>(highest - slopes.begin())] +=
        std::sin(elevation) * std::sin(elevation) / directions;
  }
  return fractions;
}

/// On a wall or under a tree, where the place sees everything through it.
bool lies_on(Point at, const Obstacle& o) {
  constexpr double near_m = 0.05;
  if (o.kind == ObstacleKind::tree) {
    return std::hypot(o.from.x_m - at.x_m, o.from.y_m - at.y_m) < o.radius_m + near_m;
  }
  for (int i = 0; i < directions; ++i) {
    if (ray_m(at, o, i + 0.5) < near_m) return true;
  }
  return o.from == o.to;
}

std::vector<Obstacle> some_white_obstacles(Point at) {
  std::vector<Obstacle> obstacles;
  const int count = *rc::gen::inRange(1, 40);
  for (int i = 0; i < count; ++i) {
    Obstacle one = some_obstacle();
    one.light_through = 0.0;
    one.albedo = 1.0;
    if (!lies_on(at, one)) obstacles.push_back(one);
  }
  return obstacles;
}

/// W/m2 of 1 W/m2 on the horizontal, from a wall that looks along the line from it to the place.
double thrown_back_slowly(Point at, const Obstacle& o, double sun_deg, double elevation_deg) {
  double facing_deg = std::atan2(at.x_m - o.from.x_m, at.y_m - o.from.y_m) / degree;
  if (o.kind == ObstacleKind::wall) {
    const double along_deg = std::atan2(o.to.x_m - o.from.x_m, o.to.y_m - o.from.y_m) / degree;
    const double side = std::sin((facing_deg - along_deg) * degree);
    facing_deg = along_deg + (side > 0.0 ? 90.0 : -90.0);
  }
  const double toward_sun = std::cos((sun_deg - facing_deg) * degree);
  return std::max(0.0, toward_sun) / std::tan(elevation_deg * degree);
}

}  // namespace

TEST_CASE("what walls and trees throw back is what comes of looking at each in every direction") {
  CHECK(rc::check([] {
    const SiteWeather weather = some_day();
    const Point at = some_point();
    const std::vector<Obstacle> obstacles = some_white_obstacles(at);
    const std::vector<double> fractions = fractions_slowly(at, obstacles);
    const CellExposure cell = expose(at, weather, obstacles);
    for (std::size_t i = 0; i < weather.grid.count; ++i) {
      double back = 0.0;
      for (std::size_t k = 0; k < obstacles.size(); ++k) {
        if (!(weather.beam_horizontal_w_m2[i] > 0.0)) continue;
        back += fractions[k] * thrown_back_slowly(at, obstacles[k], weather.sun_azimuth_deg[i],
                                                  weather.sun_elevation_deg[i]);
      }
      const double expected = weather.beam_horizontal_w_m2[i] * (cell.sunlit_fraction[i] + back) +
                              weather.diffuse_w_m2[i] * cell.sky_view;
      constexpr double rounding_w_m2 = 1e-6;
      RC_ASSERT(std::abs(cell.shortwave_w_m2[i] - expected) < rounding_w_m2);
    }
  }));
}
