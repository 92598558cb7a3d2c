#include "slabtide/job/geometry/canonical.h"

#include <array>
#include <cmath>

#include <doctest/doctest.h>

#include "support/sample_job.h"

namespace slabtide {

namespace {

constexpr double micrometre_m = 1.0 / (1 << 20);

Obstacle wall(Point from, Point to) {
  Obstacle obstacle;
  obstacle.from = from;
  obstacle.to = to;
  obstacle.height_m = 3.0;
  return obstacle;
}

/// Two pads, a walk, a face, a joint, a wall and a tree, the second pad placed first, `by` away.
Job drawn_at(Point by) {
  const auto at = [by](double x, double y) { return Point{by.x_m + x, by.y_m + y}; };
  Zone first = test::zone_named("late", {at(0, 0), at(4, 0), at(4, 3), at(0, 3)});
  first.faces.push_back({2.0, 0.2, 0.3, std::nullopt, at(1, 0)});
  first.joints = {{at(2, 0), at(2, 3)}};
  Zone second = test::zone_named("early", {at(7, 1), at(9, 1), at(9, 5), at(7, 5)});
  Zone walk = test::zone_named("walk", {at(10, -0.5), at(14, -0.5), at(14, 0.5), at(10, 0.5)});
  walk.path = Walkway{{at(10, 0), at(14, 0)}, 1.0};
  Job job = test::sample_job({first, second, walk});
  job.pour.placing_sequence = {"early", "late", "walk"};
  Obstacle tree = wall(at(-2, 6), at(-2, 6));
  tree.kind = ObstacleKind::tree;
  tree.radius_m = 1.0;
  job.obstacles = {wall(at(-1, 0), at(-1, 5)), tree};
  return job;
}

bool near(Point a, Point b) {
  return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) <= 2.0 * micrometre_m;
}

/// The same to the bit in all that is drawn.
void check_same_drawing(const Job& a, const Job& b) {
  REQUIRE(a.zones.size() == b.zones.size());
  for (std::size_t i = 0; i < a.zones.size(); ++i) {
    CAPTURE(i);
    CHECK(a.zones[i].name == b.zones[i].name);
    CHECK(a.zones[i].outline == b.zones[i].outline);
    REQUIRE(a.zones[i].path.has_value() == b.zones[i].path.has_value());
    if (a.zones[i].path) CHECK(a.zones[i].path->line == b.zones[i].path->line);
    REQUIRE(a.zones[i].faces.size() == b.zones[i].faces.size());
    for (std::size_t k = 0; k < a.zones[i].faces.size(); ++k) {
      CHECK(a.zones[i].faces[k].at == b.zones[i].faces[k].at);
    }
    REQUIRE(a.zones[i].joints.has_value() == b.zones[i].joints.has_value());
    if (!a.zones[i].joints) continue;
    REQUIRE(a.zones[i].joints->size() == b.zones[i].joints->size());
    for (std::size_t k = 0; k < a.zones[i].joints->size(); ++k) {
      CHECK((*a.zones[i].joints)[k].from == (*b.zones[i].joints)[k].from);
      CHECK((*a.zones[i].joints)[k].to == (*b.zones[i].joints)[k].to);
    }
  }
  REQUIRE(a.obstacles.size() == b.obstacles.size());
  for (std::size_t i = 0; i < a.obstacles.size(); ++i) {
    CHECK(a.obstacles[i].from == b.obstacles[i].from);
    CHECK(a.obstacles[i].to == b.obstacles[i].to);
  }
}

}  // namespace

TEST_CASE("the zones stand in the order they are placed, about the first one's first point") {
  const Job job = canonical(drawn_at({100.0, -50.0}));
  REQUIRE(job.zones.size() == 3);
  CHECK(job.zones[0].name == "early");
  CHECK(job.zones[1].name == "late");
  CHECK(job.zones[2].name == "walk");
  CHECK(job.zones[0].outline.front() == Point{0.0, 0.0});
  CHECK(job.drawing_origin == Point{107.0, -49.0});
  // By hand: all else by as much.
  CHECK(near(job.zones[0].outline[2], {2.0, 4.0}));
  CHECK(near(job.zones[1].outline[0], {-7.0, -1.0}));
  CHECK(near(*job.zones[1].faces[0].at, {-6.0, -1.0}));
  CHECK(near((*job.zones[1].joints)[0].to, {-5.0, 2.0}));
  CHECK(near(job.zones[2].path->line[1], {7.0, -1.0}));
  CHECK(near(job.obstacles[0].to, {-8.0, 4.0}));
  CHECK(near(job.obstacles[1].from, {-9.0, 5.0}));
}

TEST_CASE("drawings about other origins have one form, to the bit") {
  const Job here = canonical(drawn_at({0.0, 0.0}));
  for (const Point by : std::array<Point, 4>{
           {{0.1, 0.2}, {-1.0 / 3.0, 271.828182845}, {888.8, -777.7}, {1e-3, 1e-7}}}) {
    CAPTURE(by.x_m);
    check_same_drawing(canonical(drawn_at(by)), here);
  }
}

TEST_CASE("what has the form keeps it, and the drawing's places are found again") {
  const Job drawn = drawn_at({12.34, 56.78});
  const Job once = canonical(drawn);
  const Job twice = canonical(once);
  check_same_drawing(twice, once);
  CHECK(twice.drawing_origin == once.drawing_origin);
  for (std::size_t i = 0; i < 4; ++i) {
    CHECK(near(on_drawing(once.zones[1].outline[i], once), drawn.zones[0].outline[i]));
  }
}

TEST_CASE("the order of the tables in the file does not matter under an order of placing") {
  Job reversed = drawn_at({3.0, 4.0});
  std::reverse(reversed.zones.begin(), reversed.zones.end());
  check_same_drawing(canonical(reversed), canonical(drawn_at({3.0, 4.0})));
}

TEST_CASE("points that become one are one, and a wall without a length is none") {
  Job job = drawn_at({0.0, 0.0});
  job.zones[1].outline = {{7, 1}, {9, 1}, {9, 1 + 1e-9}, {9, 5}, {7, 5}, {7 + 1e-9, 1}};
  job.zones[2].path->line = {{10, 0}, {12, 0}, {12 + 1e-8, 0}, {14, 0}};
  job.obstacles.push_back(wall({20, 20}, {20 + 1e-9, 20}));
  const Job form = canonical(job);
  CHECK(form.zones[0].outline == Outline{{0, 0}, {2, 0}, {2, 4}, {0, 4}});
  CHECK(form.zones[2].path->line.size() == 3);
  CHECK(form.obstacles.size() == 2);  // the tree has no length either, but a crown
}

TEST_CASE("a job without zones, or with an empty outline, has a form too") {
  Job job;
  CHECK(canonical(job).drawing_origin == Point{0.0, 0.0});
  job = test::sample_job({test::zone_named("none", {})});
  CHECK(canonical(job).zones[0].outline.empty());
}

}  // namespace slabtide
