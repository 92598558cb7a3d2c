#include "weather/sky/shade.h"

#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>
#include <vector>

#include <doctest/doctest.h>

#include "support/plain_forecast.h"

using namespace slabtide;
using slabtide::testing::tree;
using slabtide::testing::wall;

// Cases checked by hand: plane geometry, x east, y north; azimuths clockwise from north.

namespace {

constexpr Point viewer{0.0, 0.0};
const std::vector<Obstacle> south_wall{wall({-50.0, -2.0}, {50.0, -2.0}, 2.0)};

}  // namespace

TEST_CASE("a wall 2 m to the south and 2 m high hides the sun under 45 deg") {
  const Surroundings place(viewer, south_wall);
  CHECK(place.sunlit_fraction({180.0, 44.9}) == 0.0);
  CHECK(place.sunlit_fraction({180.0, 45.1}) == 1.0);
  // From the south-west the wall is 2·√2 m away: atan(1/√2) = 35.26 deg.
  CHECK(place.sunlit_fraction({225.0, 35.2}) == 0.0);
  CHECK(place.sunlit_fraction({225.0, 35.3}) == 1.0);
}

TEST_CASE("a wall behind the place's back hides nothing") {
  const Surroundings place(viewer, south_wall);
  CHECK(place.sunlit_fraction({0.0, 10.0}) == 1.0);
  CHECK(place.sunlit_fraction({90.0, 10.0}) == 1.0);
}

TEST_CASE("the sun comes round the end of a wall") {
  // A wall in the east, starting at the place's own latitude and going north: the sun due east
  // grazes its end.
  const Surroundings place(viewer, {wall({3.0, 0.1}, {3.0, 9.0}, 5.0)});
  CHECK(place.sunlit_fraction({80.0, 20.0}) == 0.0);
  CHECK(place.sunlit_fraction({90.0, 20.0}) == 1.0);
  CHECK(place.sunlit_fraction({100.0, 20.0}) == 1.0);
}

TEST_CASE("a wall seen edge-on has no width") {
  const Surroundings place(viewer, {wall({0.0, 1.0}, {0.0, 5.0}, 3.0)});
  CHECK(place.sunlit_fraction({0.0, 10.0}) == 1.0);
  CHECK(place.sky_view() == doctest::Approx(1.0));
}

TEST_CASE("a tree hides what is behind its crown and lets its share through") {
  // Near edge at 4 m, 4 m high: 45 deg. Apparent half-width: asin(1/5) = 11.5 deg.
  const Surroundings place(viewer, {tree({5.0, 0.0}, 1.0, 4.0, 0.3)});
  CHECK(place.sunlit_fraction({90.0, 44.9}) == doctest::Approx(0.3));
  CHECK(place.sunlit_fraction({90.0, 45.1}) == 1.0);
  CHECK(place.sunlit_fraction({90.0 + 11.4, 20.0}) == doctest::Approx(0.3));
  CHECK(place.sunlit_fraction({90.0 + 11.6, 20.0}) == 1.0);
  CHECK(place.sunlit_fraction({270.0, 20.0}) == 1.0);
}

TEST_CASE("what obstacles let through multiplies") {
  const Surroundings place(
      viewer, {tree({5.0, 0.0}, 1.0, 4.0, 0.3), wall({8.0, -5.0}, {8.0, 5.0}, 9.0, 0.5)});
  CHECK(place.sunlit_fraction({90.0, 20.0}) == doctest::Approx(0.15));
}

TEST_CASE("among many obstacles each is met where its outline stands, whatever the direction") {
  // Plane geometry once more, by bearings: a wall is met between its ends, a tree within the angle
  // that its crown takes up.
  std::mt19937 engine(3);
  const auto sample = [&engine](double low, double high) {
    return low + (high - low) * (static_cast<double>(engine()) / 4294967295.0);
  };
  constexpr double degree = 3.14159265358979323846 / 180.0;
  const auto bearing_deg = [](Point p) { return std::atan2(p.x_m, p.y_m) / degree; };
  const auto off_deg = [](double a, double b) { return std::remainder(a - b, 360.0); };
  std::vector<Obstacle> obstacles;
  for (int i = 0; i < 60; ++i) {
    const Point at{sample(-30.0, 30.0), sample(-30.0, 30.0)};
    if (std::hypot(at.x_m, at.y_m) < 3.0) continue;
    const double through = sample(0.2, 0.9);
    if (i % 2 == 0) {
      obstacles.push_back(tree(at, sample(0.1, 2.9), 500.0, through));
    } else {
      obstacles.push_back(wall(at, {sample(-30.0, 30.0), sample(-30.0, 30.0)}, 500.0, through));
    }
  }
  const Surroundings place(viewer, obstacles);
  for (double azimuth_deg = -370.03; azimuth_deg < 740.0; azimuth_deg += 0.37) {
    CAPTURE(azimuth_deg);
    double through = 1.0;
    for (const Obstacle& one : obstacles) {
      const double from_off = off_deg(bearing_deg(one.from), azimuth_deg);
      const double to_off = off_deg(bearing_deg(one.to), azimuth_deg);
      const double away_m = std::hypot(one.from.x_m, one.from.y_m);
      const bool met =
          one.kind == ObstacleKind::tree
              ? std::abs(from_off) < std::asin(one.radius_m / away_m) / degree
              : (from_off < 0.0) != (to_off < 0.0) && std::abs(from_off - to_off) < 180.0;
      if (met) through *= one.light_through;
    }
    CHECK(place.sunlit_fraction({azimuth_deg, 1.0}) == doctest::Approx(through));
  }
}

TEST_CASE("under a tree all light has come through it") {
  const Surroundings place(viewer, {tree({0.5, 0.0}, 2.0, 4.0, 0.25)});
  CHECK(place.sunlit_fraction({30.0, 80.0}) == doctest::Approx(0.25));
  CHECK(place.sky_view() == doctest::Approx(0.25));
}

TEST_CASE("on a wall the mean of its two sides counts") {
  const Surroundings place(viewer, {wall({-5.0, 0.0}, {5.0, 0.0}, 2.0)});
  CHECK(place.sunlit_fraction({180.0, 30.0}) == doctest::Approx(0.5));
  CHECK(place.sky_view() == doctest::Approx(0.5));
}

TEST_CASE("no sun reaches anything once it is down") {
  CHECK(Surroundings(viewer, {}).sunlit_fraction({180.0, 0.0}) == 0.0);
  CHECK(Surroundings(viewer, {}).sunlit_fraction({180.0, -10.0}) == 0.0);
}

TEST_CASE("the open place sees all the sky, an open face half") {
  const Surroundings place(viewer, {});
  CHECK(place.sky_view() == doctest::Approx(1.0).epsilon(1e-12));
  CHECK(place.sky_view_of_face(35.0) == doctest::Approx(0.5).epsilon(1e-12));
}

TEST_CASE("a wall that lets light through takes its share of the sky only") {
  const double open = 1.0;
  const double behind = Surroundings(viewer, south_wall).sky_view();
  std::vector<Obstacle> lattice = south_wall;
  lattice[0].light_through = 0.4;
  CHECK(Surroundings(viewer, lattice).sky_view() ==
        doctest::Approx(behind + 0.4 * (open - behind)));
}

TEST_CASE("of a long wall as much is seen as it hides of the sky, toward the place") {
  const Surroundings place(viewer, south_wall);
  const auto sides = place.seen_sides();
  REQUIRE(sides.size() == 1);
  CHECK(sides[0].fraction == doctest::Approx(1.0 - place.sky_view()));
  CHECK(sides[0].normal.x_m == doctest::Approx(0.0));
  CHECK(sides[0].normal.y_m == doctest::Approx(1.0));
  CHECK(sides[0].albedo == doctest::Approx(0.3));
}

TEST_CASE("a lower wall before a higher is lost in it, and one behind the back is seen") {
  std::vector<Obstacle> walls = south_wall;
  walls.push_back(wall({-10.0, -1.0}, {10.0, -1.0}, 0.5));
  walls.push_back(wall({-50.0, 2.0}, {50.0, 2.0}, 2.0));
  const auto sides = Surroundings(viewer, walls).seen_sides();
  REQUIRE(sides.size() == 2);
  CHECK(sides[0].fraction == doctest::Approx(sides[1].fraction));
  CHECK(sides[1].normal.y_m == doctest::Approx(-1.0));
}

TEST_CASE("a tree is seen round, less by what it lets through; one overhead is not") {
  const auto of = [](double through) {
    return Surroundings(viewer, {tree({4.0, 0.0}, 1.0, 5.0, through)}).seen_sides();
  };
  REQUIRE(of(0.0).size() == 1);
  CHECK(of(0.0)[0].normal.x_m == doctest::Approx(-1.0));
  CHECK(of(0.25)[0].fraction == doctest::Approx(0.75 * of(0.0)[0].fraction));
  CHECK(Surroundings(viewer, {tree({0.5, 0.0}, 1.0, 5.0)}).seen_sides().empty());
}

TEST_CASE("a face sees less sky past a wall in front, none of the one behind") {
  const Surroundings place(viewer, south_wall);
  CHECK(place.sky_view_of_face(0.0) == doctest::Approx(0.5).epsilon(1e-9));
  // A long wall at 45 deg in front of a vertical face: by crossed strings 1/2 (1 - sin 45 deg).
  CHECK(place.sky_view_of_face(180.0) == doctest::Approx(0.1464).epsilon(0.01));
}

TEST_CASE("shade refuses places and obstacles that are none") {
  const double no_number = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(Surroundings({no_number, 0.0}, {}), std::invalid_argument);
  CHECK_THROWS_AS(Surroundings(viewer, {wall({0.0, 1.0}, {1.0, 1.0}, -1.0)}),
                  std::invalid_argument);
  CHECK_THROWS_AS(Surroundings(viewer, {wall({0.0, no_number}, {1.0, 1.0}, 1.0)}),
                  std::invalid_argument);
  CHECK_THROWS_AS(Surroundings(viewer, {tree({0.0, 1.0}, no_number, 1.0)}), std::invalid_argument);
  CHECK_THROWS_AS(Surroundings(viewer, {wall({0.0, 1.0}, {1.0, 1.0}, 1.0, 1.5)}),
                  std::invalid_argument);
  Obstacle mirror = wall({0.0, 1.0}, {1.0, 1.0}, 1.0);
  mirror.albedo = 1.5;
  CHECK_THROWS_AS(Surroundings(viewer, {mirror}), std::invalid_argument);
  CHECK_THROWS_AS(Surroundings(viewer, {}).sky_view_of_face(no_number), std::invalid_argument);
}
