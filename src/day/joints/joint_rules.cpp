#include "slabtide/day/joints/joint_rules.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include <fmt/format.h>

#include "day/geometry/corners.h"
#include "day/geometry/plane.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"
#include "slabtide/job/geometry/canonical.h"

namespace slabtide {

namespace {

/// A limit may be exceeded by this factor: a string line is no more accurate (ours).
constexpr double let_pass = 1.01;

/// A panel up to this long, in spacings, may have any shape (ours).
constexpr double small_panel_spacings = 0.5;

double thicknesses_of(Aggregate aggregate, const JointSpacing& rules) {
  switch (aggregate) {
    case Aggregate::sandstone:
      return rules.shrinks_max_thicknesses;
    case Aggregate::limestone:
    case Aggregate::granite:
    case Aggregate::quartzite:
      return rules.shrinks_min_thicknesses;
    case Aggregate::unknown:
    case Aggregate::gravel:
    case Aggregate::basalt:
      return rules.usual_thicknesses;
  }
  return rules.usual_thicknesses;
}

void check(const std::vector<Joint>& joints, const Panels& panels, const JointLimits& limits) {
  for (const Joint& joint : joints) perimeter_m({joint.from, joint.to});  // throws if impossible
  if (!(limits.spacing_m > 0.0 && limits.aspect > 0.0 && limits.wished_aspect > 0.0)) {
    throw std::invalid_argument("panels need a size: the limits must be positive");
  }
  for (const Panel& panel : panels.panels) {
    if (!(panel.length_m > 0.0 && panel.width_m > 0.0)) {
      throw std::invalid_argument("a panel has no size");
    }
  }
  for (const std::size_t loose : panels.loose_joints) {
    if (loose >= joints.size()) throw std::invalid_argument("a loose end is of no joint");
  }
}

void check_panel(const Panel& panel, std::size_t number, const JointLimits& limits,
                 std::vector<JointFault>& faults) {
  const auto add = [&](JointRule rule, double limit) {
    faults.push_back({rule, number, panel.centre, panel.length_m, panel.width_m, limit});
  };
  if (panel.length_m > let_pass * limits.spacing_m) add(JointRule::spacing, limits.spacing_m);
  // A panel well under the spacing shrinks too little to crack for its shape: a step, a landing.
  if (panel.length_m <= small_panel_spacings * limits.spacing_m) return;
  // In a bend a panel is longer at its outer side than in the middle.
  const double mean_aspect = panel.area_m2 / (panel.width_m * panel.width_m);
  if (panel.aspect() > let_pass * limits.aspect) {
    add(JointRule::aspect, limits.aspect);
  } else if (std::min(panel.aspect(), mean_aspect) > let_pass * limits.wished_aspect) {
    add(JointRule::wished_aspect, limits.wished_aspect);
  }
}

bool has_joint(Point corner, const std::vector<Joint>& joints) {
  return std::any_of(joints.begin(), joints.end(),
                     [corner](const Joint& joint) { return relieves(joint, corner); });
}

/// At most one decimal, and no trailing zero.
std::string number_words(double value) {
  constexpr double tenths = 10.0;
  const double rounded = std::round(value * tenths) / tenths;
  return fmt::format("{:g}", rounded == 0.0 ? 0.0 : rounded);
}

double in_units(double m, UnitSystem units) { return units == UnitSystem::us ? ft_from_m(m) : m; }

}  // namespace

JointLimits joint_limits(const Zone& zone, Aggregate aggregate, const JointSpacing& rules) {
  return {std::min(thicknesses_of(aggregate, rules) * zone.thickness_m, rules.max_m),
          rules.max_aspect,
          zone.path ? std::min(rules.walkway_aspect, rules.max_aspect) : rules.max_aspect};
}

bool is_preference(const JointFault& fault) { return fault.rule == JointRule::wished_aspect; }

std::vector<JointFault> check_joints(const Outline& outline, const std::vector<Joint>& joints,
                                     const Panels& panels, const JointLimits& limits) {
  check(joints, panels, limits);
  std::vector<JointFault> faults;
  for (std::size_t i = 0; i < panels.panels.size(); ++i) {
    check_panel(panels.panels[i], i, limits, faults);
  }
  const std::vector<Point> corners = re_entrant_corners(outline);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    if (!has_joint(corners[i], joints)) {
      faults.push_back({JointRule::corner, i, corners[i], 0.0, 0.0, 0.0});
    }
  }
  for (const std::size_t loose : panels.loose_joints) {
    faults.push_back({JointRule::loose_end, loose, plane::middle(joints[loose]), 0.0, 0.0, 0.0});
  }
  return faults;
}

std::string place_words(Point place, UnitSystem units) {
  return fmt::format("({}, {})", number_words(in_units(place.x_m, units)),
                     number_words(in_units(place.y_m, units)));
}

std::string distance_words(double m, UnitSystem units) {
  return number_words(in_units(m, units)) + (units == UnitSystem::us ? " ft" : " m");
}

std::string size_words(double length_m, double width_m, UnitSystem units) {
  return fmt::format("{} by {}", number_words(in_units(length_m, units)),
                     distance_words(width_m, units));
}

std::string fault_words(const JointFault& fault, const Job& job) {
  const UnitSystem units = job.units;
  const std::string where = place_words(on_drawing(fault.at, job), units);
  const std::string size = size_words(fault.length_m, fault.width_m, units);
  switch (fault.rule) {
    case JointRule::spacing:
      return fmt::format("panel {} about {} is {}: over the {} allowed", fault.number + 1, where,
                         size, distance_words(fault.limit, units));
    case JointRule::aspect:
      return fmt::format("panel {} about {} is {}: {:.1f} to 1, over {:g} to 1", fault.number + 1,
                         where, size, fault.length_m / fault.width_m, fault.limit);
    case JointRule::wished_aspect:
      return fmt::format("panel {} about {} is {}: {:.1f} to 1, a walk's is better under {:g} to 1",
                         fault.number + 1, where, size, fault.length_m / fault.width_m,
                         fault.limit);
    case JointRule::corner:
      return fmt::format("the inside corner at {} has no joint: it cracks from there", where);
    case JointRule::loose_end:
      return fmt::format("joint {} about {} ends inside a panel: its crack runs on to an edge",
                         fault.number + 1, where);
  }
  return {};
}

}  // namespace slabtide
