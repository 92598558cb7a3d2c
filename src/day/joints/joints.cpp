#include "slabtide/day/joints/joints.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <tuple>

#include "day/geometry/chords.h"
#include "grid_joints.h"
#include "job/geometry/zone_geometry.h"
#include "walkway_joints.h"

namespace slabtide {

namespace {

constexpr double joint_reach_m = 0.15;
/// Panels whose middles are within this of each other north to south are in one row.
constexpr double one_row_m = 0.3;
/// Limit over all sets that are tried for a zone. Only slabs with hundreds of corners reach it; for
/// them the best of the first sets is good enough.
constexpr std::size_t max_joints_judged = 20000;

/// Joints inside the zone, each with the index under which it was drawn.
struct DrawnJoints {
  std::vector<Joint> joints;
  std::vector<std::size_t> numbers;
};

DrawnJoints within_zone(const Zone& zone, const std::vector<Joint>& drawn) {
  DrawnJoints kept;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    std::vector<Joint> others = drawn;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    const Joint whole = chords::reaching(drawn[i], zone.outline, others, joint_reach_m);
    for (const Joint& part : chords::inside(zone.outline, whole)) {
      kept.joints.push_back(part);
      kept.numbers.push_back(i);
    }
  }
  return kept;
}

/// A panel's position in the order: along a walkway, else by row, counted from the northernmost
/// panel, and from the west within the row.
std::pair<double, double> place_in_order(const Zone& zone, const Panel& panel, double north_m) {
  if (zone.path) return {distance_along_m(*zone.path, panel.centre), 0.0};
  return {std::round((north_m - panel.centre.y_m) / one_row_m), panel.centre.x_m};
}

void sort_panels(const Zone& zone, std::vector<Panel>& panels) {
  std::vector<std::pair<std::pair<double, double>, std::size_t>> order;
  double north_m = -std::numeric_limits<double>::infinity();
  for (const Panel& panel : panels) north_m = std::max(north_m, panel.centre.y_m);
  for (std::size_t i = 0; i < panels.size(); ++i) {
    order.emplace_back(place_in_order(zone, panels[i], north_m), i);
  }
  std::sort(order.begin(), order.end());
  std::vector<Panel> sorted;
  sorted.reserve(panels.size());
  for (const auto& [place, i] : order) sorted.push_back(std::move(panels[i]));
  panels = std::move(sorted);
}

/// Splits the zone into panels and checks them against the rules.
void judge(const Zone& zone, ZoneJoints& plan) {
  Panels split = split_into_panels(zone.outline, plan.joints);
  sort_panels(zone, split.panels);
  plan.faults = check_joints(zone.outline, plan.joints, split, plan.limits);
  plan.panels = std::move(split.panels);
}

/// The number of broken rules, then of broken preferences.
std::pair<std::ptrdiff_t, std::ptrdiff_t> badness(const ZoneJoints& plan) {
  const auto preferences = std::count_if(plan.faults.begin(), plan.faults.end(), is_preference);
  return {static_cast<std::ptrdiff_t>(plan.faults.size()) - preferences, preferences};
}

/// The best of these sets for the zone: the first that breaks the fewest rules, then preferences.
ZoneJoints best_of(const std::vector<std::vector<Joint>>& sets, const Zone& zone,
                   const ZoneJoints& plan) {
  std::optional<ZoneJoints> best;
  std::size_t judged = 0;
  for (const std::vector<Joint>& joints : sets) {
    judged += joints.size();
    if (best && judged > max_joints_judged) break;
    ZoneJoints tried = plan;
    tried.joints = joints;
    judge(zone, tried);
    if (best && badness(tried) >= badness(*best)) continue;
    best = std::move(tried);
    if (best->faults.empty()) break;
  }
  return std::move(*best);
}

void propose(const Zone& zone, ZoneJoints& plan) {
  if (!zone.path) {
    plan = best_of(grid_joint_sets(zone.outline, plan.limits), zone, plan);
    return;
  }
  // Nobody saws a walk down its middle for a nicer shape of its panels: only for a rule.
  constexpr int max_extra_lanes = 1;
  ZoneJoints best = best_of(walkway_joint_sets(zone, plan.limits, 0), zone, plan);
  for (int extra = 1; extra <= max_extra_lanes && best.breaks_a_rule(); ++extra) {
    ZoneJoints laned = best_of(walkway_joint_sets(zone, plan.limits, extra), zone, plan);
    if (badness(laned) < badness(best)) best = std::move(laned);
  }
  plan = std::move(best);
}

void check(const Zone& zone, const JointLimits& limits) {
  if (const auto fault = outline_fault(zone.outline)) {
    throw std::invalid_argument("the zone's outline cannot be used: " + *fault);
  }
  if (zone.path) walkway_fault(*zone.path);  // throws for an impossible line
  for (const Joint& joint : zone.joints.value_or(std::vector<Joint>{})) {
    if (!(perimeter_m({joint.from, joint.to}) > 0.0)) {
      throw std::invalid_argument("a joint has no length");
    }
  }
  if (!(limits.spacing_m > 0.0 && limits.aspect > 0.0 && limits.wished_aspect > 0.0)) {
    throw std::invalid_argument("panels need a size: the thickness and the rules must be positive");
  }
}

}  // namespace

bool ZoneJoints::breaks_a_rule() const {
  return std::any_of(faults.begin(), faults.end(),
                     [](const JointFault& fault) { return !is_preference(fault); });
}

ZoneJoints plan_joints(const Zone& zone, const Job& job, const JointSpacing& rules) {
  ZoneJoints plan;
  plan.limits = joint_limits(zone, job.mix.aggregate, rules);
  check(zone, plan.limits);
  plan.isolation = find_isolation(zone, job.obstacles);
  if (!zone.joints) {
    propose(zone, plan);
    return plan;
  }
  plan.drawn = true;
  DrawnJoints drawn = within_zone(zone, *zone.joints);
  plan.joints = std::move(drawn.joints);
  judge(zone, plan);
  for (JointFault& fault : plan.faults) {
    if (fault.rule == JointRule::loose_end) fault.number = drawn.numbers[fault.number];
  }
  return plan;
}

}  // namespace slabtide
