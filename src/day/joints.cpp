#include "slabtide/day/joints.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <tuple>

#include "chords.h"
#include "grid_joints.h"
#include "slabtide/job/zone_geometry.h"
#include "walk_joints.h"

namespace slabtide {

namespace {

constexpr double reach_m = 0.15;
/// Panels whose middles lie within this of one another north and south are in one row.
constexpr double one_row_m = 0.3;

/// Joints within the zone, each with the number it was drawn as.
struct DrawnJoints {
  std::vector<Joint> joints;
  std::vector<std::size_t> numbers;
};

DrawnJoints within_zone(const Zone& zone, const std::vector<Joint>& drawn) {
  DrawnJoints kept;
  for (std::size_t i = 0; i < drawn.size(); ++i) {
    std::vector<Joint> others = drawn;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    const Joint whole = chords::reaching(drawn[i], zone.outline, others, reach_m);
    for (const Joint& part : chords::inside(zone.outline, whole)) {
      kept.joints.push_back(part);
      kept.numbers.push_back(i);
    }
  }
  return kept;
}

void sort_panels(const Zone& zone, std::vector<Panel>& panels) {
  std::sort(panels.begin(), panels.end(), [&zone](const Panel& a, const Panel& b) {
    if (zone.path) {
      return distance_along_m(*zone.path, a.centre) < distance_along_m(*zone.path, b.centre);
    }
    const auto row = [](const Panel& panel) { return std::lround(-panel.centre.y_m / one_row_m); };
    return std::pair(row(a), a.centre.x_m) < std::pair(row(b), b.centre.x_m);
  });
}

/// Splits the zone and holds it against the rules.
void judge(const Zone& zone, ZoneJoints& plan) {
  Panels split = split_into_panels(zone.outline, plan.joints);
  sort_panels(zone, split.panels);
  plan.faults = check_joints(zone.outline, plan.joints, split, plan.limits);
  plan.panels = std::move(split.panels);
}

/// Rules broken, then preferences.
std::pair<std::ptrdiff_t, std::ptrdiff_t> badness(const ZoneJoints& plan) {
  const auto preferences = std::count_if(plan.faults.begin(), plan.faults.end(), is_preference);
  return {static_cast<std::ptrdiff_t>(plan.faults.size()) - preferences, preferences};
}

void propose(const Zone& zone, ZoneJoints& plan) {
  const auto sets =
      zone.path ? walk_joint_sets(zone, plan.limits) : grid_joint_sets(zone.outline, plan.limits);
  std::optional<ZoneJoints> best;
  for (const std::vector<Joint>& joints : sets) {
    ZoneJoints tried = plan;
    tried.joints = joints;
    judge(zone, tried);
    if (best && badness(tried) >= badness(*best)) continue;
    best = std::move(tried);
    if (best->faults.empty()) break;
  }
  plan = std::move(*best);
}

}  // namespace

bool ZoneJoints::breaks_a_rule() const {
  return std::any_of(faults.begin(), faults.end(),
                     [](const JointFault& fault) { return !is_preference(fault); });
}

ZoneJoints plan_joints(const Zone& zone, const Job& job, const JointSpacing& rules) {
  ZoneJoints plan;
  plan.limits = joint_limits(zone, job.mix.aggregate, rules);
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
