#include <algorithm>

#include <doctest/doctest.h>

#include "day/geometry/corners.h"
#include "day/joints/cut_order.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"
#include "support/sample_job.h"

// Working order: inside corners and tied edges first, then the middle of the longest uncut run,
// then one after another (common practice, no source).

namespace slabtide {

namespace {

ZoneJoints planned(const Zone& zone, const std::vector<Obstacle>& obstacles = {}) {
  Job job = test::sample_job({zone});
  job.obstacles = obstacles;
  return plan_joints(zone, job, default_practice().joints);
}

/// Placed from west to east, ready in that order.
std::vector<JointTurn> eastward(const ZoneJoints& joints) {
  std::vector<JointTurn> turns;
  for (const Joint& joint : joints.joints) {
    const double along_m = 0.5 * (joint.from.x_m + joint.to.x_m);
    turns.push_back({along_m, 100.0 * along_m});
  }
  return turns;
}

double middle_ft(const Cut& cut) {
  return ft_from_m(0.5 * (cut.joint.from.x_m + cut.joint.to.x_m));
}

double uncut_ft(const Cut& cut) { return ft_from_m(cut.piece.uncut_length_m); }

/// 40 ft by 4 ft, joints every 5 ft.
Zone forty_foot_walk() {
  Zone walk = test::zone_named("walk", {});
  walk.path = Walkway{{{0, 0}, {m_from_ft(40), 0}}, m_from_ft(4)};
  walk.outline = outline_of_walkway(*walk.path);
  return walk;
}

}  // namespace

TEST_CASE("a walk is cut in the middle first, then from where it was placed on") {
  const Zone walk = forty_foot_walk();
  const ZoneJoints joints = planned(walk);
  const std::vector<Cut> cuts = order_cuts(walk, joints, eastward(joints));
  REQUIRE(cuts.size() == 7);
  const std::vector<double> places_ft{20, 5, 10, 15, 25, 30, 35};
  const std::vector<double> pieces_ft{40, 20, 15, 10, 20, 15, 10};
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    CHECK(middle_ft(cuts[i]) == doctest::Approx(places_ft[i]));
    CHECK(uncut_ft(cuts[i]) == doctest::Approx(pieces_ft[i]));
    CHECK(cuts[i].reason == (i == 0 ? CutReason::longest_run : CutReason::next_along));
    CHECK(!cuts[i].piece.tied);
  }
}

TEST_CASE("a walk whose far end is ready first is cut from there back") {
  const Zone walk = forty_foot_walk();
  const ZoneJoints joints = planned(walk);
  std::vector<JointTurn> turns = eastward(joints);
  for (JointTurn& turn : turns) turn.ready_s = -turn.ready_s;
  const std::vector<Cut> cuts = order_cuts(walk, joints, turns);
  const std::vector<double> places_ft{20, 35, 30, 25, 15, 10, 5};
  REQUIRE(cuts.size() == places_ft.size());
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    CHECK(middle_ft(cuts[i]) == doctest::Approx(places_ft[i]));
  }
}

TEST_CASE("an L-shaped porch gets its inside corner cut first (common practice, no source)") {
  const double ft = m_from_ft(1);
  const Zone porch = test::zone_named(
      "porch",
      {{0, 0}, {20 * ft, 0}, {20 * ft, 8 * ft}, {8 * ft, 8 * ft}, {8 * ft, 18 * ft}, {0, 18 * ft}});
  const ZoneJoints joints = planned(porch);
  const std::vector<Cut> cuts = order_cuts(porch, joints, eastward(joints));
  REQUIRE(cuts.size() >= 2);
  CHECK(cuts[0].reason == CutReason::corner);
  const Point corner = re_entrant_corners(porch.outline)[0];
  const auto at_corner = [&](Point p) {
    return std::hypot(p.x_m - corner.x_m, p.y_m - corner.y_m) < 0.01;
  };
  CHECK((at_corner(cuts[0].joint.from) || at_corner(cuts[0].joint.to)));
  CHECK(cuts[0].piece.re_entrant_corner);
  CHECK(!cuts[1].piece.re_entrant_corner);
  CHECK(cuts.back().reason != CutReason::corner);
}

TEST_CASE("what a zone is tied to is cut from first, and pieces away from it are free") {
  // 30 by 12 ft, its west end at the house: the joints that start there run east.
  const double ft = m_from_ft(1);
  Zone landing = test::zone_named("landing", test::rectangle(0, 0, 30 * ft, 12 * ft));
  landing.tied = true;
  Obstacle house;
  house.name = "house";
  house.from = {0, -3};
  house.to = {0, 9};
  const ZoneJoints joints = planned(landing, {house});
  const std::vector<Cut> cuts = order_cuts(landing, joints, eastward(joints));
  REQUIRE(joints.faults.empty());
  REQUIRE(cuts.size() == joints.joints.size());
  CHECK(cuts[0].reason == CutReason::tied_edge);
  CHECK(std::min(cuts[0].joint.from.x_m, cuts[0].joint.to.x_m) == doctest::Approx(0.0));
  CHECK(cuts[0].piece.tied);
  CHECK(cuts[1].reason == CutReason::longest_run);
  CHECK(!cuts.back().piece.tied);
}

TEST_CASE("where the plan does not show what a zone is tied to, every piece counts as tied") {
  Zone walk = forty_foot_walk();
  walk.tied = true;
  const ZoneJoints joints = planned(walk);
  for (const Cut& cut : order_cuts(walk, joints, eastward(joints))) CHECK(cut.piece.tied);
}

TEST_CASE("a zone without joints has no cuts") {
  const Zone pad = test::zone_named("pad", test::rectangle(0, 0, 2, 2));
  CHECK(order_cuts(pad, planned(pad), {}).empty());
}

}  // namespace slabtide
