#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "day/geometry/chords.h"
#include "day/geometry/corners.h"
#include "day/joints/cut_order.h"
#include "job/geometry/zone_geometry.h"
#include "random_slab.h"
#include "slabtide/day/joints/joints.h"

// What must hold for the joints of any slab.

namespace slabtide {

namespace {

ZoneJoints planned(const Zone& zone) {
  return plan_joints(zone, test::sample_job({zone}), default_practice().joints);
}

double panel_area_m2(const std::vector<Panel>& panels) {
  return std::accumulate(panels.begin(), panels.end(), 0.0,
                         [](double sum, const Panel& panel) { return sum + panel.area_m2; });
}

void check_areas(const Zone& zone, const std::vector<Panel>& panels) {
  const double whole_m2 = area_m2(zone.outline);
  RC_ASSERT(std::abs(panel_area_m2(panels) - whole_m2) < 1e-6 * whole_m2);
}

Zone any_slab() {
  switch (*rc::gen::inRange(0, 4)) {
    case 0:
      return test::random_rectangle();
    case 1:
      return test::random_l();
    case 2:
      return test::random_straight_walk();
    default:
      return test::random_curved_walk();
  }
}

/// A star with up to sixty points, near the origin.
Outline random_star() {
  const int points = 2 * *rc::gen::inRange(3, 60);
  const double out_m = test::in_range(3.0, 15.0);
  const double in_m = out_m * test::in_range(0.3, 0.95);
  Outline star;
  for (int i = 0; i < points; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / points;
    const double r_m = i % 2 == 0 ? out_m : in_m;
    star.push_back({r_m * std::cos(angle), r_m * std::sin(angle)});
  }
  return test::laid_anyhow(star);
}

double distance_m(Point a, Point b) { return std::hypot(b.x_m - a.x_m, b.y_m - a.y_m); }

/// The longest distance between two corners.
double across_m(const Outline& outline) {
  double longest_m = 0.0;
  for (const Point& a : outline) {
    for (const Point& b : outline) longest_m = std::max(longest_m, distance_m(a, b));
  }
  return longest_m;
}

}  // namespace

TEST_CASE("panels of any drawn joints add up to the zone") {
  CHECK(rc::check("areas of panels", [] {
    Zone zone = any_slab();
    zone.joints.emplace();
    const int joints = *rc::gen::inRange(0, 12);
    for (int i = 0; i < joints; ++i) {
      // Ends are at corners as often as anywhere else, because those are the hard cases.
      const auto end = [&zone]() -> Point {
        if (*rc::gen::arbitrary<bool>()) return *rc::gen::elementOf(zone.outline);
        return {zone.outline[0].x_m + test::in_range(-8, 8),
                zone.outline[0].y_m + test::in_range(-8, 8)};
      };
      const Joint joint{end(), end()};
      if (distance_m(joint.from, joint.to) > 0.1) zone.joints->push_back(joint);
    }
    check_areas(zone, planned(zone).panels);
  }));
}

TEST_CASE("chords are all of a line that is inside, and nothing else") {
  CHECK(rc::check("chords", [] {
    const Outline outline = *rc::gen::arbitrary<bool>() ? any_slab().outline : random_star();
    const Point through = *rc::gen::arbitrary<bool>()
                              ? *rc::gen::elementOf(outline)
                              : Point{test::in_range(-20, 20), test::in_range(-20, 20)};
    const double angle = test::in_range(0.0, 2.0 * std::numbers::pi);
    const plane::Vector along{std::cos(angle), std::sin(angle)};
    const std::vector<Joint> found = chords::across(outline, through, along);
    for (int i = -400; i <= 400; ++i) {
      const Point at = plane::moved(through, along, 0.1003 * i);
      if (plane::distance_to_sides(at, outline) < 0.003) continue;
      const bool on_one = std::any_of(found.begin(), found.end(), [at](const Joint& chord) {
        return plane::distance(at, chord) < 0.001;
      });
      RC_ASSERT(on_one == contains(outline, at));
    }
  }));
}

TEST_CASE("the lines across a star cut it into panels that add up to it") {
  CHECK(rc::check("panels of stars", [] {
    Zone zone = test::zone_named("star", random_star());
    zone.joints.emplace();
    for (int i = 0; i < 6; ++i) {
      const double angle = test::in_range(0.0, std::numbers::pi);
      const Point through = *rc::gen::elementOf(zone.outline);
      const plane::Vector along{std::cos(angle), std::sin(angle)};
      for (const Joint& chord : chords::across(zone.outline, through, along)) {
        zone.joints->push_back(chord);
      }
    }
    const Panels split = split_into_panels(zone.outline, *zone.joints);
    // What lies within 2 mm is one place, so that slivers between lines at a small angle are lost.
    const double whole_m2 = area_m2(zone.outline);
    RC_ASSERT(std::abs(panel_area_m2(split.panels) - whole_m2) < 5e-4 * whole_m2);
    for (const Panel& panel : split.panels) {
      for (const Joint& joint : *zone.joints) {
        const Point middle = plane::middle(joint);
        if (!contains(panel.outline, middle)) continue;
        // Nothing is left uncut: a joint runs along panels, not through them.
        RC_ASSERT(plane::distance_to_sides(middle, panel.outline) < 0.005);
      }
    }
  }));
}

TEST_CASE("panels of any proposal add up to the zone, and every inside corner has a joint") {
  CHECK(rc::check("areas and corners of proposals", [] {
    const Zone zone = any_slab();
    const ZoneJoints plan = planned(zone);
    check_areas(zone, plan.panels);
    for (const JointFault& fault : plan.faults) RC_ASSERT(fault.rule != JointRule::corner);
    RC_ASSERT(re_entrant_corners(zone.outline).size() <= plan.joints.size());
  }));
}

TEST_CASE("proposals for rectangles and walks keep every rule") {
  CHECK(rc::check("rectangles",
                  [] { RC_ASSERT(!planned(test::random_rectangle()).breaks_a_rule()); }));
  CHECK(rc::check("straight walks",
                  [] { RC_ASSERT(!planned(test::random_straight_walk()).breaks_a_rule()); }));
  CHECK(rc::check("curved walks",
                  [] { RC_ASSERT(!planned(test::random_curved_walk()).breaks_a_rule()); }));
}

TEST_CASE("a proposal drawn by the user passes as it did") {
  CHECK(rc::check("drawing a proposal", [] {
    Zone zone = any_slab();
    const ZoneJoints proposed = planned(zone);
    zone.joints = proposed.joints;
    const ZoneJoints drawn = planned(zone);
    RC_ASSERT(drawn.panels.size() == proposed.panels.size());
    RC_ASSERT(drawn.faults.size() == proposed.faults.size());
  }));
}

TEST_CASE("the cut order is every joint once, and leaves nothing longer than the zone") {
  CHECK(rc::check("cut order", [] {
    const Zone zone = any_slab();
    const ZoneJoints plan = planned(zone);
    std::vector<JointTurn> turns;
    for (std::size_t i = 0; i < plan.joints.size(); ++i) {
      turns.push_back({test::in_range(0, 20), test::in_range(0, 20)});
    }
    const std::vector<Cut> cuts = order_cuts(zone, plan, turns);
    RC_ASSERT(cuts.size() == plan.joints.size());
    for (const Joint& joint : plan.joints) {
      const auto made = std::count_if(cuts.begin(), cuts.end(), [&joint](const Cut& cut) {
        return cut.joint.from == joint.from && cut.joint.to == joint.to;
      });
      RC_ASSERT(made == 1);
    }
    for (const Cut& cut : cuts) {
      RC_ASSERT(cut.piece.uncut_length_m > 0.0);
      RC_ASSERT(cut.piece.uncut_length_m <= across_m(zone.outline) + 1e-6);
    }
  }));
}

}  // namespace slabtide
