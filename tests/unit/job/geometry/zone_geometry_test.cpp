#include <cmath>
#include <limits>
#include <numbers>
#include <stdexcept>

#include <doctest/doctest.h>

#include "job/geometry/zone_geometry.h"
#include "slabtide/job/geometry/cells.h"

using namespace slabtide;

namespace {

const Outline square{{0, 0}, {3, 0}, {3, 3}, {0, 3}};
/// An L: a 4 x 4 square without its upper right 2 x 2.
const Outline ell{{0, 0}, {4, 0}, {4, 2}, {2, 2}, {2, 4}, {0, 4}};

/// A quarter circle of radius 6 m in chords of about 2 ft.
Walkway curved_walk(double width_m) {
  Walkway path{.line = {}, .width_m = width_m};
  constexpr double radius_m = 6.0;
  constexpr int chords = 15;
  for (int i = 0; i <= chords; ++i) {
    const double angle = std::numbers::pi / 2.0 * i / chords;
    path.line.push_back({radius_m * std::cos(angle), radius_m * std::sin(angle)});
  }
  return path;
}

}  // namespace

TEST_CASE("areas, perimeters and centroids of plain shapes") {
  CHECK(area_m2(square) == doctest::Approx(9.0));
  CHECK(perimeter_m(square) == doctest::Approx(12.0));
  CHECK(centroid(square).x_m == doctest::Approx(1.5));
  CHECK(area_m2(ell) == doctest::Approx(12.0));
  CHECK(perimeter_m(ell) == doctest::Approx(16.0));
  // Three 2 x 2 squares about (1,1), (3,1) and (1,3).
  CHECK(centroid(ell).x_m == doctest::Approx(5.0 / 3.0));
  CHECK(centroid(ell).y_m == doctest::Approx(5.0 / 3.0));
  const Outline clockwise(square.rbegin(), square.rend());
  CHECK(area_m2(clockwise) == doctest::Approx(9.0));
  CHECK(centroid(clockwise).y_m == doctest::Approx(1.5));
}

TEST_CASE("contains counts the outline in and the notch out") {
  CHECK(contains(ell, {1, 3}));
  CHECK(contains(ell, {4, 1}));
  CHECK(contains(ell, {0, 0}));
  CHECK_FALSE(contains(ell, {3, 3}));
  CHECK_FALSE(contains(ell, {-0.01, 1}));
}

TEST_CASE("counter_clockwise keeps the first point first") {
  const Outline clockwise{{0, 0}, {0, 3}, {3, 3}, {3, 0}};
  CHECK(counter_clockwise(clockwise) == square);
  CHECK(counter_clockwise(square) == square);
}

TEST_CASE("a straight walk is a rectangle with square ends") {
  const auto outline = outline_of_walkway({.line = {{0, 0}, {0, 10}}, .width_m = 2.0});
  CHECK(outline == Outline{{1, 0}, {1, 10}, {-1, 10}, {-1, 0}});
}

TEST_CASE("a right-angled walk is mitred") {
  const auto outline = outline_of_walkway({.line = {{0, 0}, {10, 0}, {10, 10}}, .width_m = 2.0});
  REQUIRE(outline.size() == 6);
  CHECK(outline[1].x_m == doctest::Approx(11.0));
  CHECK(outline[1].y_m == doctest::Approx(-1.0));
  CHECK(outline[4].x_m == doctest::Approx(9.0));
  CHECK(outline[4].y_m == doctest::Approx(1.0));
  CHECK(area_m2(outline) == doctest::Approx(40.0));
}

TEST_CASE("a curved walk's outline is clean and runs counter-clockwise") {
  const auto path = curved_walk(1.2192);
  const auto outline = outline_of_walkway(path);
  CHECK(outline.size() == 2 * path.line.size());
  CHECK_FALSE(walkway_fault(path));
  CHECK_FALSE(outline_fault(outline));
  CHECK(area_m2(outline) == doctest::Approx(line_length_m(path) * path.width_m).epsilon(1e-12));
  CHECK(counter_clockwise(outline) == outline);
  // Every corner is half the width from the arc, apart from the mitre (1/cos of half a turn).
  for (const auto& corner : outline) {
    const double off_arc = std::abs(std::hypot(corner.x_m, corner.y_m) - 6.0);
    CHECK(off_arc == doctest::Approx(0.6096).epsilon(0.002));
  }
}

TEST_CASE("outline_of_walk refuses what it cannot draw") {
  CHECK_THROWS_AS(outline_of_walkway({.line = {{0, 0}}, .width_m = 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(outline_of_walkway({.line = {{0, 0}, {0, 0}}, .width_m = 1.0}),
                  std::invalid_argument);
  CHECK_THROWS_AS(outline_of_walkway({.line = {{0, 0}, {1, 0}}, .width_m = std::nan("")}),
                  std::invalid_argument);
}

TEST_CASE("walk_fault names the bend that is too tight") {
  // The inner edge of a right-angled bend needs half the width on both sides of it.
  const Walkway tight{.line = {{0, 0}, {5, 0}, {5, 0.9}}, .width_m = 2.0};
  REQUIRE(walkway_fault(tight));
  CHECK(*walkway_fault(tight) == "between points 2 and 3 it bends tighter than its width allows");
  const Walkway wide_enough{.line = {{0, 0}, {5, 0}, {5, 1.1}}, .width_m = 2.0};
  CHECK_FALSE(walkway_fault(wide_enough));
  const Walkway doubles_back{.line = {{0, 0}, {5, 0}, {1, 0}}, .width_m = 1.0};
  CHECK(walkway_fault(doubles_back));
}

TEST_CASE("outline_fault says what is wrong") {
  CHECK_FALSE(outline_fault(square));
  CHECK_FALSE(outline_fault(ell));
  CHECK_FALSE(outline_fault({square.rbegin(), square.rend()}));
  CHECK(outline_fault({{0, 0}, {1, 1}}) == "an outline needs three points or more, got 2");
  CHECK(
      outline_fault({{0, 0}, {2, 2}, {2, 0}, {0, 2}}) ==
      "it crosses or touches itself: the side from point 1 to 2 meets the side from point 3 to 4");
  CHECK(outline_fault({{0, 0}, {2, 0}, {2, 0}, {0, 2}}) == "points 2 and 3 are the same");
  CHECK(outline_fault({{0, 0}, {1, 0}, {2, 0}}) == "it encloses no area");
  // A spike that runs out and back.
  CHECK(
      outline_fault({{0, 0}, {3, 0}, {2, 0}, {2, 2}, {0, 2}}) ==
      "it crosses or touches itself: the side from point 1 to 2 meets the side from point 3 to 4");
}

TEST_CASE("a border fits while a field is left") {
  CHECK(border_fits(square, 1.49));
  CHECK_FALSE(border_fits(square, 1.51));
  CHECK_FALSE(border_fits(square, 5.0));
  CHECK(border_fits(ell, 0.99));
  CHECK_FALSE(border_fits(ell, 1.2));
}

TEST_CASE("shared areas") {
  const Outline beside{{3, 0}, {6, 0}, {6, 3}, {3, 3}};
  const Outline over{{2, 1}, {6, 1}, {6, 2}, {2, 2}};
  CHECK(shared_area_m2(square, beside) == doctest::Approx(0.0));
  CHECK(shared_area_m2(square, over) == doctest::Approx(1.0));
  CHECK(shared_area_m2(over, square) == doctest::Approx(1.0));
  CHECK(shared_area_m2(square, square) == doctest::Approx(9.0));
  CHECK(shared_area_m2(square, ell) == doctest::Approx(8.0));
  // Across the notch: only the arms count.
  CHECK(shared_area_m2(ell, {{3.5, 1}, {3.5, 3}, {1, 3}, {1, 1}}) == doctest::Approx(4.0 - 0.5));
  const Outline apart{{5, 5}, {6, 5}, {6, 6}};
  CHECK(shared_area_m2(square, apart) == doctest::Approx(0.0));
}

TEST_CASE("distance along a walk is that of the nearest place on its line") {
  const Walkway path{.line = {{0, 0}, {10, 0}, {10, 10}}, .width_m = 2.0};
  CHECK(line_length_m(path) == doctest::Approx(20.0));
  CHECK(distance_along_m(path, {3, 0.7}) == doctest::Approx(3.0));
  CHECK(distance_along_m(path, {10.5, 4}) == doctest::Approx(14.0));
  CHECK(distance_along_m(path, {-5, 0}) == doctest::Approx(0.0));
  CHECK(distance_along_m(path, {10, 99}) == doctest::Approx(20.0));
}

TEST_CASE("volume counts the slab, what stands below it, and what is named besides") {
  Zone zone;
  zone.outline = square;
  zone.thickness_m = 0.1;
  FormedFace riser;
  riser.length_m = 3.0;
  riser.height_m = 0.1;  // the slab's own edge: no concrete of its own
  zone.faces.push_back(riser);
  CHECK(volume_m3(zone) == doctest::Approx(0.9));
  zone.faces[0].height_m = 0.15;
  CHECK(volume_m3(zone) == doctest::Approx(0.9 + 3.0 * 0.05 * 0.3048));
  zone.faces[0].tread_m = 1.0;
  zone.extra_volume_m3 = 0.5;
  CHECK(volume_m3(zone) == doctest::Approx(0.9 + 3.0 * 0.05 * 1.0 + 0.5));
}

namespace {

/// Invalid outlines: empty, too few points, a bow-tie, not finite, out of range.
std::vector<Outline> no_outlines() {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  return {{},
          {{0, 0}},
          {{0, 0}, {1, 1}},
          {{0, 0}, {2, 2}, {2, 0}, {0, 2}},
          {{0, 0}, {nan, 0}, {1, 1}},
          {{0, 0}, {std::numeric_limits<double>::infinity(), 0}, {1, 1}},
          {{0, 0}, {1e308, 0}, {1e308, 1e308}, {0, 1e308}}};
}

}  // namespace

TEST_CASE("shapes that are none are refused wherever they are handed in") {
  for (const Outline& outline : no_outlines()) {
    CHECK(outline_fault(outline));
    CHECK_THROWS_AS(inset(outline, 0.1), std::invalid_argument);
    CHECK_THROWS_AS(border_fits(outline, 0.1), std::invalid_argument);
    CHECK_THROWS_AS(shared_area_m2(outline, square), std::invalid_argument);
    CHECK_THROWS_AS(shared_area_m2(square, outline), std::invalid_argument);
    Zone zone;
    zone.outline = outline;
    CHECK_THROWS_AS(cut_into_cells(zone), std::invalid_argument);
  }
  CHECK_THROWS_AS(centroid({}), std::invalid_argument);
  CHECK_THROWS_AS(outside_by_m({}, {0, 0}), std::invalid_argument);
  CHECK(area_m2({}) == 0.0);
  CHECK(perimeter_m({}) == 0.0);
  CHECK(counter_clockwise({}).empty());
  CHECK_FALSE(contains({}, {0, 0}));
}

TEST_CASE("figures that are none are refused") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  for (const double no_width : {nan, 0.0, -1.0}) {
    CHECK_THROWS_AS(inset(square, no_width), std::invalid_argument);
    CHECK_THROWS_AS(walkway_fault({{{0, 0}, {1, 0}}, no_width}), std::invalid_argument);
    CHECK_THROWS_AS(distance_along_m({{{0, 0}, {1, 0}}, no_width}, {0, 0}), std::invalid_argument);
  }
  CHECK(inset(square, 1e308).empty());
  CHECK_THROWS_AS(outline_of_walkway({{{0, 0}, {1e308, 0}}, 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(outline_of_walkway({{{0, 0}, {1, 0}}, 1e308}), std::invalid_argument);
  CHECK_THROWS_AS(line_length_m({{{0, 0}, {nan, 0}}, 1.0}), std::invalid_argument);
  CHECK_THROWS_AS(distance_along_m({{{0, 0}, {1, 0}}, 1.0}, {nan, 0}), std::invalid_argument);
  CHECK_THROWS_AS(distance_along_m({{}, 1.0}, {0, 0}), std::invalid_argument);
  CHECK_THROWS_AS(contains(square, {nan, 0}), std::invalid_argument);
  CHECK_THROWS_AS(outside_by_m(square, {0, 1e308}), std::invalid_argument);
  Zone zone;
  zone.outline = square;
  zone.placed_toward_deg = nan;
  CHECK_THROWS_AS(cut_into_cells(zone), std::invalid_argument);
  zone.placed_toward_deg.reset();
  zone.border = Border{nan, Finish::broom};
  CHECK_THROWS_AS(cut_into_cells(zone), std::invalid_argument);
  zone.border.reset();
  zone.path = Walkway{{{0, 0}}, 1.0};
  CHECK_THROWS_AS(cut_into_cells(zone), std::invalid_argument);
  zone.path.reset();
  zone.outline = {{0, 0}, {50000, 0}, {50000, 50000}};
  CHECK_THROWS_AS(cut_into_cells(zone), std::invalid_argument);
}
