#include <functional>
#include <limits>
#include <stdexcept>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "day/geometry/corners.h"
#include "day/joints/cut_order.h"
#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/joints/isolation.h"
#include "slabtide/day/joints/joint_rules.h"
#include "slabtide/day/joints/joints.h"
#include "slabtide/day/joints/saw_shift.h"
#include "slabtide/day/windows/saw_plan.h"
#include "support/sample_job.h"

// Shapes on the plan, passed to the functions that take them without a whole job: each must refuse
// what its header says with std::invalid_argument.

namespace slabtide::test::drawn {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inf = std::numeric_limits<double>::infinity();
constexpr double far_m = 1.0e6;  // beyond any plan

const Outline square = rectangle(0, 0, 4, 4);
const Outline bow_tie{{0, 0}, {4, 4}, {4, 0}, {0, 4}};
const Joint across{{2, 0}, {2, 4}};

/// The square with one corner moved to `x_m`.
Outline with_corner(double x_m) {
  Outline outline = square;
  outline[2].x_m = x_m;
  return outline;
}

Obstacle wall(double x_m) {
  Obstacle obstacle;
  obstacle.name = "house";
  obstacle.from = {x_m, 0};
  obstacle.to = {0, 9};
  return obstacle;
}

Zone pad(Outline outline) {
  Zone zone = zone_named("pad", std::move(outline));
  zone.tied = true;
  return zone;
}

Zone walk_of(Walkway path) {
  Zone zone = pad(square);
  zone.path = std::move(path);
  return zone;
}

Zone jointed(const Joint& joint) {
  Zone zone = pad(square);
  zone.joints = {joint};
  return zone;
}

Zone thick(double thickness_m) {
  Zone zone = pad(square);
  zone.thickness_m = thickness_m;
  return zone;
}

/// A call that must be refused.
struct Refusal {
  std::string what;
  std::function<void()> call;
};

void all_refused(const std::vector<Refusal>& refusals) {
  for (const Refusal& refusal : refusals) {
    CAPTURE(refusal.what);
    CHECK_THROWS_AS(refusal.call(), std::invalid_argument);
  }
}

ZoneJoints joints_of(const Zone& zone, const std::vector<Obstacle>& obstacles = {}) {
  Job job = sample_job({zone});
  job.obstacles = obstacles;
  return plan_joints(zone, job, default_practice().joints);
}

ZoneJoints one_joint(const Joint& joint) {
  ZoneJoints joints = joints_of(jointed(across));
  joints.joints = {joint};
  return joints;
}

}  // namespace

TEST_CASE("panels refuse what is no outline, no joint and no direction") {
  const Panel panel = panel_of(square);
  all_refused({
      {"two points",
       [] {
         split_into_panels({{0, 0}, {4, 0}}, {});
       }},
      {"a corner that is no number", [] { split_into_panels(with_corner(nan), {}); }},
      {"a corner beyond any plan", [] { split_into_panels(with_corner(far_m), {}); }},
      {"a joint that is no number",
       [] {
         split_into_panels(square, {{{0, nan}, {4, 2}}});
       }},
      {"a joint without end",
       [] {
         split_into_panels(square, {{{0, 0}, {inf, 2}}});
       }},
      {"a panel of two points",
       [] {
         panel_of({{0, 0}, {4, 0}});
       }},
      {"a panel that is no place", [] { panel_of(with_corner(-inf)); }},
      {"no direction", [&] { extent_m(panel, 0.0, 0.0); }},
      {"a direction that is no number", [&] { extent_m(panel, nan, 1.0); }},
      {"a direction longer than 1", [&] { extent_m(panel, 1.0, 1.0); }},
      {"a panel without outline", [] { extent_m(Panel{}, 1.0, 0.0); }},
      {"a corner of an outline that is none", [] { re_entrant_corners(with_corner(nan)); }},
  });
  CHECK(extent_m(panel, 1.0, 0.0) == doctest::Approx(4.0));
}

TEST_CASE("an outline that crosses itself cuts into panels all the same") {
  CHECK_NOTHROW(split_into_panels(bow_tie, {across}));
  CHECK_NOTHROW(split_into_panels({{0, 0}, {4, 0}, {2, 0}}, {across}));
  CHECK_NOTHROW(split_into_panels(square, {{{2, 2}, {2, 2}}}));
}

TEST_CASE("what stands beside a zone is refused where it is no place") {
  const std::vector<Isolation> tied = find_isolation(pad(square), {wall(0.0)});
  all_refused({
      {"a zone", [] { find_isolation(pad(with_corner(nan)), {}); }},
      {"a wall", [] { find_isolation(pad(square), {wall(nan)}); }},
      {"a wall beyond any plan", [] { find_isolation(pad(square), {wall(-far_m)}); }},
      {"a place",
       [&] {
         at_tied_edge(tied, {nan, 0});
       }},
      {"a place without end",
       [&] {
         at_tied_edge(tied, {0, inf});
       }},
      {"a piece", [&] { reaches_tied_edge(tied, with_corner(nan)); }},
  });
  CHECK(at_tied_edge(tied, {0.0, 2.0}));
}

TEST_CASE("rules are held against panels and limits with a size alone") {
  const Panels panels = split_into_panels(square, {across});
  const JointLimits limits{4.5, 1.5, 1.25};
  const auto with = [&](Panels changed, JointLimits to) {
    check_joints(square, {across}, changed, to);
  };
  Panels loose = panels;
  loose.loose_joints = {1};
  Panels flat = panels;
  flat.panels[0].width_m = 0.0;
  all_refused({
      {"an outline", [&] { check_joints(with_corner(nan), {across}, panels, limits); }},
      {"a joint",
       [&] {
         check_joints(square, {{{nan, 0}, {2, 4}}}, panels, limits);
       }},
      {"a loose end of no joint", [&] { with(loose, limits); }},
      {"a panel without width", [&] { with(flat, limits); }},
      {"no spacing",
       [&] {
         with(panels, {0.0, 1.5, 1.25});
       }},
      {"an aspect that is no number",
       [&] {
         with(panels, {4.5, nan, 1.25});
       }},
      {"a wish below zero",
       [&] {
         with(panels, {4.5, 1.5, -1.0});
       }},
  });
  CHECK_NOTHROW(with(panels, limits));
}

TEST_CASE("joints are planned for a zone that can be poured") {
  all_refused({
      {"a bow-tie", [] { joints_of(pad(bow_tie)); }},
      {"no outline", [] { joints_of(pad({})); }},
      {"a line of one point",
       [] {
         joints_of(walk_of({{{0, 0}}, 1.0}));
       }},
      {"a line that stands still",
       [] {
         joints_of(walk_of({{{0, 0}, {0, 0}}, 1.0}));
       }},
      {"no thickness", [] { joints_of(thick(0.0)); }},
      {"a thickness that is no number", [] { joints_of(thick(nan)); }},
      {"a joint that is no place",
       [] {
         joints_of(jointed({{2, nan}, {2, 4}}));
       }},
      {"a joint without length",
       [] {
         joints_of(jointed({{2, 0}, {2, 0}}));
       }},
      {"a wall that is no place", [] { joints_of(pad(square), {wall(nan)}); }},
      {"rules of nothing",
       [] { plan_joints(pad(square), sample_job({pad(square)}), JointSpacing{.max_m = nan}); }},
  });
}

TEST_CASE("cuts are put in order with one turn a joint") {
  const auto order = [](const Zone& zone, const ZoneJoints& joints,
                        const std::vector<JointTurn>& turns) { order_cuts(zone, joints, turns); };
  const ZoneJoints one = one_joint(across);
  all_refused({
      {"a bow-tie", [&] { order(pad(bow_tie), one, {{}}); }},
      {"no turn", [&] { order(pad(square), one, {}); }},
      {"two turns",
       [&] {
         order(pad(square), one, {{}, {}});
       }},
      {"a turn that is no number",
       [&] {
         order(pad(square), one, {{nan, 0.0}});
       }},
      {"a turn that never comes",
       [&] {
         order(pad(square), one, {{0.0, inf}});
       }},
      {"a joint without length",
       [&] {
         order(pad(square), one_joint({{2, 0}, {2, 0}}), {{}});
       }},
      {"a joint that is no place",
       [&] {
         order(pad(square), one_joint({{nan, 0}, {2, 4}}), {{}});
       }},
  });
  CHECK_NOTHROW(order(pad(square), one, {{}}));
}

TEST_CASE("a saw is led through cuts that lie in a zone") {
  const Job job = sample_job({pad(square)});
  const SawRules rules = default_practice().saw;
  PlannedCut cut;
  cut.cut.joint = across;
  cut.cut.length_m = 4.0;
  cut.early_entry_opens = job.pour.start;
  PlannedCut elsewhere = cut;
  elsewhere.zone = 1;
  PlannedCut endless = cut;
  endless.cut.length_m = nan;
  SawRules still = rules;
  still.speed_m_h = 0.0;
  const auto lead = [&](int saws, const PlannedCut& planned, const SawRules& with) {
    lead_saws(SawKind::early_entry, saws, {planned}, job, with);
  };
  all_refused({
      {"no saw", [&] { lead(0, cut, rules); }},
      {"fewer than none", [&] { lead(-1, cut, rules); }},
      {"a cut of no zone", [&] { lead(1, elsewhere, rules); }},
      {"a cut of no length", [&] { lead(1, endless, rules); }},
      {"a saw that stands still", [&] { lead(1, cut, still); }},
      {"a shift of it", [&] { plan_shift(SawKind::early_entry, {elsewhere}, job, rules); }},
  });
  CHECK_NOTHROW(lead(1, cut, rules));
}

TEST_CASE("an uncut piece has a length where the zone has a shape") {
  all_refused({
      {"a bow-tie", [] { uncut_length_m(pad(bow_tie)); }},
      {"no outline", [] { uncut_length_m(pad({})); }},
      {"a corner that is no number", [] { uncut_length_m(pad(with_corner(nan))); }},
      {"a line that is no place",
       [] {
         uncut_length_m(walk_of({{{0, 0}, {nan, 4}}, 1.0}));
       }},
  });
  CHECK(uncut_length_m(pad(square)) == doctest::Approx(4.0));
}

}  // namespace slabtide::test::drawn
