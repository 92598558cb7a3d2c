#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "job/geometry/zone_geometry.h"
#include "slabtide/job/geometry/cells.h"

using namespace slabtide;

namespace {

Zone zone_of(Outline outline) {
  Zone zone;
  zone.outline = std::move(outline);
  return zone;
}

Outline rectangle(double length_m, double width_m) {
  return {{0, 0}, {length_m, 0}, {length_m, width_m}, {0, width_m}};
}

double total_m2(const std::vector<Cell>& cells) {
  double sum = 0.0;
  for (const auto& cell : cells) sum += cell.area_m2;
  return sum;
}

double border_m2(const std::vector<Cell>& cells) {
  double sum = 0.0;
  for (const auto& cell : cells) sum += cell.border ? cell.area_m2 : 0.0;
  return sum;
}

bool fractions_rise_within_bounds(const std::vector<Cell>& cells) {
  double before = 0.0;
  for (const auto& cell : cells) {
    if (!(cell.placed_fraction >= before && cell.placed_fraction <= 1.0)) return false;
    before = cell.placed_fraction;
  }
  return true;
}

double uniform(double low, double high) {
  constexpr int steps = 1'000'000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

/// A convex polygon: points on a random ellipse, rotated and shifted.
Outline convex_outline() {
  const int corners = *rc::gen::inRange(3, 9);
  const double a = uniform(1.0, 12.0);
  const double b = uniform(1.0, 6.0);
  const double turn = uniform(0.0, 6.28);
  const Point shift{uniform(-30.0, 30.0), uniform(-30.0, 30.0)};
  Outline outline;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + uniform(-0.3, 0.3)) / corners;
    const double x = a * std::cos(angle);
    const double y = b * std::sin(angle);
    outline.push_back({shift.x_m + x * std::cos(turn) - y * std::sin(turn),
                       shift.y_m + x * std::sin(turn) + y * std::cos(turn)});
  }
  return outline;
}

/// A gently winding walkway: turns of at most 0.25 rad at intervals of 2 ft or more.
Walkway winding_walk() {
  Walkway path{.line = {{0, 0}}, .width_m = uniform(0.6, 2.4)};
  const int chords = *rc::gen::inRange(1, 30);
  double heading = uniform(0.0, 6.28);
  for (int i = 0; i < chords; ++i) {
    const double step_m = uniform(0.61, 1.5);
    path.line.push_back({path.line.back().x_m + step_m * std::cos(heading),
                         path.line.back().y_m + step_m * std::sin(heading)});
    heading += uniform(-0.25, 0.25);
  }
  return path;
}

}  // namespace

TEST_CASE("a rectangle is cut evenly and placed along its longer side from its first point") {
  const auto cells = cut_into_cells(zone_of(rectangle(10 * cell_size_m, 4 * cell_size_m)));
  REQUIRE(cells.size() == 40);
  for (const auto& cell : cells) {
    CHECK(cell.area_m2 == doctest::Approx(cell_size_m * cell_size_m));
    CHECK_FALSE(cell.border);
  }
  // The first four cells are in the first row, whose middle is at a twentieth of the zone.
  CHECK(cells.front().centre.x_m == doctest::Approx(cell_size_m / 2.0));
  CHECK(cells[3].placed_fraction == doctest::Approx(0.05));
  CHECK(cells[4].placed_fraction == doctest::Approx(0.15));
  CHECK(cells.back().placed_fraction == doctest::Approx(0.95));
  CHECK(cells.back().along_m == doctest::Approx(9.5 * cell_size_m));
}

TEST_CASE("placing starts at the end where the first point lies, either way round") {
  const Outline from_far_end{{6, 0}, {6, 2}, {0, 2}, {0, 0}};
  CHECK(cut_into_cells(zone_of(from_far_end)).front().centre.x_m > 5.0);
  const Outline upright{{0, 6}, {0, 0}, {2, 0}, {2, 6}};
  CHECK(cut_into_cells(zone_of(upright)).front().centre.y_m > 5.0);
}

TEST_CASE("a direction given by hand is followed") {
  auto zone = zone_of(rectangle(6, 2));
  zone.placed_toward_deg = 270.0;
  CHECK(cut_into_cells(zone).front().centre.x_m > 5.0);
  zone.placed_toward_deg = 0.0;
  const auto northward = cut_into_cells(zone);
  CHECK(northward.front().centre.y_m < 0.6);
  CHECK(northward.front().along_m == doctest::Approx(northward.front().centre.y_m));
}

TEST_CASE("a walk is placed along its line, or back along it") {
  Zone zone;
  zone.path = Walkway{.line = {{0, 0}, {6, 0}, {6, 6}}, .width_m = 1.2};
  zone.outline = outline_of_walkway(*zone.path);
  const auto cells = cut_into_cells(zone);
  CHECK(cells.front().centre.x_m < 0.5);
  CHECK(cells.back().centre.y_m > 5.5);
  CHECK(cells.back().along_m > 11.5);
  zone.placed_toward_deg = 180.0;
  const auto back = cut_into_cells(zone);
  CHECK(back.front().centre.y_m > 5.5);
  CHECK(back.front().along_m < 0.5);
  CHECK(back.back().centre.x_m < 0.5);
}

TEST_CASE("a border strip is cut into pieces of its own") {
  auto zone = zone_of(rectangle(4.0, 3.0));
  zone.border = Border{.width_m = 0.3, .finish = Finish::broom};
  const auto cells = cut_into_cells(zone);
  CHECK(total_m2(cells) == doctest::Approx(12.0).epsilon(1e-9));
  CHECK(border_m2(cells) == doctest::Approx(12.0 - 3.4 * 2.4).epsilon(1e-6));
  for (const auto& cell : cells) {
    const double to_side =
        std::min({cell.centre.x_m, 4.0 - cell.centre.x_m, cell.centre.y_m, 3.0 - cell.centre.y_m});
    CHECK((to_side < 0.3) == cell.border);
  }
}

TEST_CASE("a zone smaller than a cell is one cell") {
  const auto cells = cut_into_cells(zone_of(rectangle(0.4, 0.3)));
  REQUIRE(cells.size() == 1);
  CHECK(cells.front().placed_fraction == doctest::Approx(0.5));
  CHECK(cells.front().area_m2 == doctest::Approx(0.12));
}

TEST_CASE("a faulty outline is refused") {
  CHECK_THROWS_AS(cut_into_cells(zone_of({{0, 0}, {2, 2}, {2, 0}, {0, 2}})), std::invalid_argument);
}

TEST_CASE("convex outlines: areas sum, shares rise in [0, 1], centres lie inside") {
  CHECK(rc::check([] {
    auto zone = zone_of(convex_outline());
    if (*rc::gen::inRange(0, 2) == 1) zone.placed_toward_deg = uniform(0.0, 360.0);
    const double width_m = uniform(0.05, 0.6);
    if (*rc::gen::inRange(0, 2) == 1 && border_fits(zone.outline, width_m)) {
      zone.border = Border{.width_m = width_m, .finish = Finish::broom};
    }
    const auto cells = cut_into_cells(zone);
    RC_ASSERT(!cells.empty());
    RC_ASSERT(std::abs(total_m2(cells) - area_m2(zone.outline)) < 1e-6);
    RC_ASSERT(fractions_rise_within_bounds(cells));
    for (const auto& cell : cells) {
      RC_ASSERT(contains(zone.outline, cell.centre));
    }
  }));
}

TEST_CASE("winding walks: area is length times width, cells sum to it and follow the line") {
  CHECK(rc::check([] {
    Zone zone;
    zone.path = winding_walk();
    if (walkway_fault(*zone.path)) RC_DISCARD("too tight");
    zone.outline = outline_of_walkway(*zone.path);
    if (outline_fault(zone.outline)) RC_DISCARD("winds into itself");
    const double length_m = line_length_m(*zone.path);
    RC_ASSERT(std::abs(area_m2(zone.outline) - length_m * zone.path->width_m) < 1e-9);
    const auto cells = cut_into_cells(zone);
    RC_ASSERT(std::abs(total_m2(cells) - area_m2(zone.outline)) < 1e-6);
    RC_ASSERT(fractions_rise_within_bounds(cells));
    for (const auto& cell : cells) {
      RC_ASSERT(cell.along_m >= 0.0 && cell.along_m <= length_m);
      // The fraction placed follows the distance, to within the length of a cell.
      const double by_length = cell.along_m / length_m;
      RC_ASSERT(std::abs(cell.placed_fraction - by_length) < 1.5 * cell_size_m / length_m);
    }
  }));
}
