#include <algorithm>
#include <cmath>
#include <numbers>

#include <doctest/doctest.h>

#include "day/geometry/corners.h"
#include "day/geometry/plane.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"
#include "slabtide/day/joints/joints.h"
#include "support/sample_job.h"

// The joint rules and the proposals. Rules: ACI 302.1R and 360R, municipal walk standards
// (published, as data/practice.toml says). What must pass and what must fail: common practice,
// no source.

namespace slabtide {

namespace {

Outline feet(std::initializer_list<Point> corners) {
  Outline outline;
  for (const Point& corner : corners) {
    outline.push_back({m_from_ft(corner.x_m), m_from_ft(corner.y_m)});
  }
  return outline;
}

Zone slab(Outline outline, double thickness_in = 4.0) {
  Zone zone = test::zone_named("slab", std::move(outline));
  zone.thickness_m = m_from_in(thickness_in);
  return zone;
}

Zone walk(const Outline& line, double width_ft) {
  Zone zone = slab({});
  zone.path = Walkway{line, m_from_ft(width_ft)};
  zone.outline = outline_of_walkway(*zone.path);
  return zone;
}

Joint joint_ft(double x0, double y0, double x1, double y1) {
  return {{m_from_ft(x0), m_from_ft(y0)}, {m_from_ft(x1), m_from_ft(y1)}};
}

ZoneJoints planned_joints(const Zone& zone) {
  return plan_joints(zone, test::sample_job({zone}), default_practice().joints);
}

/// A straight 4 ft walkway with `panels` panels of `each_ft` and joints drawn by the user.
ZoneJoints walkway_cut_every(double each_ft, int panels) {
  Zone zone = walk(feet({{0, 0}, {each_ft * panels, 0}}), 4);
  zone.joints.emplace();
  for (int i = 1; i < panels; ++i) {
    zone.joints->push_back(joint_ft(each_ft * i, -2, each_ft * i, 2));
  }
  return planned_joints(zone);
}

bool breaks(const ZoneJoints& plan, JointRule rule) {
  return std::any_of(plan.faults.begin(), plan.faults.end(),
                     [rule](const JointFault& fault) { return fault.rule == rule; });
}

/// Along the line x = 0.
Obstacle house_to_the_east() {
  Obstacle house;
  house.name = "house";
  house.from = {0, m_from_ft(-32)};
  house.to = {0, m_from_ft(22)};
  return house;
}

}  // namespace

TEST_CASE("a 4 ft walk in 5 ft panels passes (common practice, no source)") {
  const ZoneJoints plan = walkway_cut_every(5.0, 8);
  CHECK(plan.drawn);
  CHECK(plan.panels.size() == 8);
  CHECK(plan.faults.empty());
}

TEST_CASE("about 5 ft passes too: 5 ft 4 in breaks no rule (common practice, no source)") {
  const ZoneJoints plan = walkway_cut_every(16.0 / 3.0, 6);
  CHECK(!plan.breaks_a_rule());
}

TEST_CASE("the same walk in 12 ft panels fails (common practice, no source)") {
  const ZoneJoints plan = walkway_cut_every(12.0, 4);
  CHECK(plan.breaks_a_rule());
  CHECK(breaks(plan, JointRule::aspect));
  CHECK(breaks(plan, JointRule::spacing));  // 30 x 4 in is 10 ft
  REQUIRE(!plan.faults.empty());
  CHECK(fault_words(plan.faults[0], Job{}) ==
        "panel 1 about (6, 0) is 12 by 4 ft: over the 10 ft allowed");
  CHECK(fault_words(plan.faults[1], Job{}) ==
        "panel 1 about (6, 0) is 12 by 4 ft: 3.0 to 1, over 1.5 to 1");
}

TEST_CASE("an 8 in pad in 7 by 9 ft panels passes (common practice, no source)") {
  Zone zone = slab(feet({{0, 0}, {21, 0}, {21, 18}, {0, 18}}), 8);
  zone.joints = {joint_ft(7, 0, 7, 18), joint_ft(14, 0, 14, 18), joint_ft(0, 9, 21, 9)};
  const ZoneJoints plan = planned_joints(zone);
  CHECK(plan.panels.size() == 6);
  CHECK(plan.faults.empty());
}

TEST_CASE("spacing goes by thickness and stone, and not over 15 ft") {
  const JointSpacing rules = default_practice().joints;
  const Zone thin = slab(feet({{0, 0}, {1, 0}, {1, 1}}), 4);
  const Zone thick = slab(feet({{0, 0}, {1, 0}, {1, 1}}), 8);
  CHECK(joint_limits(thin, Aggregate::sandstone, rules).spacing_m == doctest::Approx(m_from_ft(8)));
  CHECK(joint_limits(thin, Aggregate::unknown, rules).spacing_m == doctest::Approx(m_from_ft(10)));
  CHECK(joint_limits(thin, Aggregate::granite, rules).spacing_m == doctest::Approx(m_from_ft(12)));
  CHECK(joint_limits(thick, Aggregate::granite, rules).spacing_m == doctest::Approx(m_from_ft(15)));
}

TEST_CASE("the inside corner of an L without a joint is told") {
  Zone zone = slab(feet({{0, 0}, {8, 0}, {8, 4}, {4, 4}, {4, 8}, {0, 8}}));
  zone.joints = {joint_ft(0, 2, 8, 2)};
  const ZoneJoints plan = planned_joints(zone);
  REQUIRE(breaks(plan, JointRule::corner));
  zone.joints = {joint_ft(0, 4, 4, 4)};
  CHECK(!breaks(planned_joints(zone), JointRule::corner));
}

TEST_CASE("a joint drawn 3 in short of the edge is taken to reach it; one 2 ft short is told") {
  Zone zone = slab(feet({{0, 0}, {14, 0}, {14, 10}, {0, 10}}));
  zone.joints = {joint_ft(7, 0.25, 7, 9.75)};
  CHECK(planned_joints(zone).panels.size() == 2);
  CHECK(planned_joints(zone).faults.empty());
  zone.joints = {joint_ft(7, 0, 7, 8)};
  CHECK(planned_joints(zone).panels.size() == 1);
  CHECK(breaks(planned_joints(zone), JointRule::loose_end));
}

TEST_CASE("an empty list of joints is a wish, and held against the rules like any other") {
  Zone zone = slab(feet({{0, 0}, {30, 0}, {30, 10}, {0, 10}}));
  zone.joints.emplace();
  CHECK(planned_joints(zone).drawn);
  CHECK(breaks(planned_joints(zone), JointRule::spacing));
}

TEST_CASE("a small pad is proposed no joint, a landing of 14 by 12 ft four panels") {
  CHECK(planned_joints(slab(feet({{0, 0}, {9, 0}, {9, 7}, {0, 7}}))).joints.empty());
  const ZoneJoints plan = planned_joints(slab(feet({{0, 0}, {0, 12}, {-14, 12}, {-14, 0}})));
  CHECK(plan.faults.empty());
  REQUIRE(plan.panels.size() == 4);
  CHECK(plan.panels[0].length_m == doctest::Approx(m_from_ft(7)));
  CHECK(plan.panels[0].width_m == doctest::Approx(m_from_ft(6)));
}

TEST_CASE("a straight 40 ft walk 4 ft wide is proposed 5 ft panels, square to its line") {
  const ZoneJoints plan = planned_joints(walk(feet({{0, 0}, {24, 32}}), 4));
  CHECK(plan.faults.empty());
  REQUIRE(plan.joints.size() == 7);
  for (const Joint& joint : plan.joints) {
    const double along =
        0.6 * (joint.to.x_m - joint.from.x_m) + 0.8 * (joint.to.y_m - joint.from.y_m);
    CHECK(along == doctest::Approx(0.0).scale(1.0));
    CHECK(std::hypot(joint.to.x_m - joint.from.x_m, joint.to.y_m - joint.from.y_m) ==
          doctest::Approx(m_from_ft(4)));
  }
}

TEST_CASE("joints of a curved walk point at the middle of its curve") {
  // A quarter circle of 6 m about the origin, drawn every 5 degrees.
  Outline line;
  for (int i = 0; i <= 18; ++i) {
    const double angle = i * 5.0 * 3.14159265358979 / 180.0;
    line.push_back({6.0 * std::cos(angle), 6.0 * std::sin(angle)});
  }
  const ZoneJoints plan = planned_joints(walk(line, 4));
  CHECK(!plan.breaks_a_rule());
  REQUIRE(plan.joints.size() >= 5);
  for (const Joint& joint : plan.joints) {
    // Distance from the origin to the joint's line.
    const double dx = joint.to.x_m - joint.from.x_m;
    const double dy = joint.to.y_m - joint.from.y_m;
    const double off = (joint.from.x_m * dy - joint.from.y_m * dx) / std::hypot(dx, dy);
    CHECK(std::abs(off) < 0.05);
  }
}

TEST_CASE("a walk that turns a square corner gets a panel in it, from the inside corner") {
  const ZoneJoints plan = planned_joints(walk(feet({{0, 0}, {20, 0}, {20, 15}}), 4));
  CHECK(!plan.breaks_a_rule());
  const Point inside{m_from_ft(18), m_from_ft(2)};
  const auto from_corner =
      std::count_if(plan.joints.begin(), plan.joints.end(), [&](const Joint& j) {
        const auto near = [&](Point p) {
          return std::hypot(p.x_m - inside.x_m, p.y_m - inside.y_m) < 1e-6;
        };
        return near(j.from) || near(j.to);
      });
  CHECK(from_corner == 2);
}

TEST_CASE("an L-shaped porch has its inside corner relieved and every panel in the rules") {
  const Outline porch = feet({{0, 0}, {20, 0}, {20, 8}, {8, 8}, {8, 18}, {0, 18}});
  const ZoneJoints plan = planned_joints(slab(porch));
  CHECK(plan.faults.empty());
  CHECK(re_entrant_corners(porch).size() == 1);
}

TEST_CASE("a proposal saws no more than it must") {
  // 24 by 20 ft with legs of 9 ft: one line off the inside corner and one in each leg make four
  // panels of 9 by 10 and 7.5 by 9 ft.
  const ZoneJoints plan =
      planned_joints(slab(feet({{0, 0}, {24, 0}, {24, 9}, {9, 9}, {9, 20}, {0, 20}})));
  CHECK(plan.faults.empty());
  CHECK(plan.joints.size() == 3);
  CHECK(plan.panels.size() == 4);
}

TEST_CASE("a narrow walk that bends is cut across, never down its middle") {
  // Common practice, no source: a 4 ft walk is cut every 4 to 5 ft.
  const ZoneJoints plan = planned_joints(walk(feet({{8, 0}, {8, -10}, {12, -18}, {20, -22}}), 4));
  CHECK(plan.joints.size() == 5);
  CHECK(plan.panels.size() == 6);
  CHECK(plan.faults.empty());
  for (const Joint& joint : plan.joints) CHECK(plane::length_m(joint) < m_from_ft(4.5));
}

TEST_CASE("a step is not sawn, and a round slab is cut along the drawing") {
  // Common practice, no source.
  CHECK(planned_joints(slab(feet({{0, 0}, {6, 0}, {6, 3}, {0, 3}}), 7.0)).joints.empty());
  Outline round;
  constexpr int corners = 28;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2.0 * std::numbers::pi * (i + 0.3) / corners;
    round.push_back({3.0 * std::cos(angle), 3.0 * std::sin(angle)});
  }
  const ZoneJoints plan = planned_joints(slab(round));
  REQUIRE(!plan.joints.empty());
  for (const Joint& joint : plan.joints) {
    const double along = std::abs(joint.to.x_m - joint.from.x_m);
    const double up = std::abs(joint.to.y_m - joint.from.y_m);
    CHECK(std::min(along, up) < 1e-9);
  }
}

TEST_CASE("corners by the hundred are told, not cut through by the thousand") {
  Outline star;
  constexpr int points = 400;
  for (int i = 0; i < points; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / points + 0.01;
    const double r_m = m_from_ft(i % 2 == 0 ? 38.0 : 30.0);
    star.push_back({r_m * std::cos(angle), r_m * std::sin(angle)});
  }
  const ZoneJoints plan = planned_joints(slab(star));
  CHECK(breaks(plan, JointRule::corner));
  CHECK(plan.joints.size() >= 7);  // a line each 10 ft over 76 ft
  CHECK(plan.joints.size() < 500);
}

TEST_CASE("a wall along the edge asks for isolation, unless the zone is tied to it") {
  Zone zone = slab(feet({{0, 0}, {0, 12}, {-14, 12}, {-14, 0}}));
  const Obstacle house = house_to_the_east();
  CHECK(find_isolation(zone, {}).empty());
  REQUIRE(find_isolation(zone, {house}).size() == 1);
  const Isolation beside = find_isolation(zone, {house})[0];
  CHECK(beside.structure == "house");
  CHECK(!beside.tied);
  CHECK(beside.length_m == doctest::Approx(m_from_ft(12)).epsilon(0.03));
  zone.tied = true;
  REQUIRE(find_isolation(zone, {house}).size() == 1);
  CHECK(find_isolation(zone, {house})[0].tied);
  REQUIRE(find_isolation(zone, {}).size() == 1);
  CHECK(find_isolation(zone, {})[0].structure == "the structure");
  CHECK(at_tied_edge(find_isolation(zone, {house}), {m_from_ft(-0.5), m_from_ft(6)}));
  CHECK(!at_tied_edge(find_isolation(zone, {house}), {m_from_ft(-7), m_from_ft(6)}));
  CHECK(at_tied_edge(find_isolation(zone, {}), {m_from_ft(-7), m_from_ft(6)}));
}

TEST_CASE("a zone is tied by the edges that it names, and isolated from walls at the others") {
  Zone zone = slab(feet({{0, 0}, {0, 12}, {-14, 12}, {-14, 0}}));
  const Obstacle house = house_to_the_east();
  const Joint at_house{zone.outline[0], zone.outline[1]};
  const Joint far{zone.outline[3], zone.outline[2]};  // named the other way round
  zone.tied = true;
  zone.tied_edges = {far};
  const std::vector<Isolation> beyond = find_isolation(zone, {house});
  REQUIRE(beyond.size() == 2);
  CHECK(beyond[0].tied);
  CHECK(beyond[0].structure == "the structure to the west");
  CHECK(beyond[0].length_m == doctest::Approx(m_from_ft(12)));
  CHECK(beyond[1].structure == "house");
  CHECK(!beyond[1].tied);
  CHECK(at_tied_edge(beyond, {m_from_ft(-13.5), m_from_ft(6)}));
  CHECK(!at_tied_edge(beyond, {m_from_ft(-0.5), m_from_ft(6)}));
  zone.tied_edges = {at_house, far};
  const std::vector<Isolation> both = find_isolation(zone, {house});
  REQUIRE(both.size() == 2);
  CHECK(both[0].structure == "house");
  CHECK(both[0].tied);
  CHECK(both[1].tied);
  CHECK(at_tied_edge(both, {m_from_ft(-0.5), m_from_ft(6)}));
  CHECK(!at_tied_edge(both, {m_from_ft(-7), m_from_ft(6)}));
}

}  // namespace slabtide
