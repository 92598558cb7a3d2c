#pragma once

#include <cmath>
#include <numbers>

#include <rapidcheck.h>

#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"
#include "support/sample_job.h"

// Random slabs for the properties of joints and saw cuts.

namespace slabtide::test {

/// A number between `low` and `high`, in a thousand steps.
inline double in_range(double low, double high) {
  constexpr int steps = 1000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

/// The outline rotated about the origin and moved.
inline Outline laid_anyhow(Outline outline) {
  const double angle = in_range(0.0, 2.0 * std::numbers::pi);
  const Point to{in_range(-20.0, 20.0), in_range(-20.0, 20.0)};
  for (Point& p : outline) {
    p = {to.x_m + p.x_m * std::cos(angle) - p.y_m * std::sin(angle),
         to.y_m + p.x_m * std::sin(angle) + p.y_m * std::cos(angle)};
  }
  return outline;
}

inline Zone random_rectangle() {
  Zone zone =
      zone_named("slab", laid_anyhow(rectangle(0, 0, in_range(1.0, 15.0), in_range(1.0, 15.0))));
  zone.thickness_m = m_from_in(in_range(3.5, 8.0));
  return zone;
}

/// An L: a rectangle minus one at a corner; neither leg is thinner than a fifth.
inline Zone random_l() {
  const double length = in_range(4.0, 15.0);
  const double depth = in_range(4.0, 15.0);
  const double x = length * in_range(0.2, 0.8);
  const double y = depth * in_range(0.2, 0.8);
  Zone zone = zone_named(
      "slab", laid_anyhow({{0, 0}, {length, 0}, {length, y}, {x, y}, {x, depth}, {0, depth}}));
  zone.thickness_m = m_from_in(in_range(3.5, 8.0));
  return zone;
}

inline Zone walk_along(std::vector<Point> line, double width_m) {
  Zone zone = zone_named("walk", {});
  zone.path = Walkway{laid_anyhow(std::move(line)), width_m};
  zone.outline = outline_of_walkway(*zone.path);
  zone.thickness_m = m_from_in(in_range(3.5, 6.0));
  return zone;
}

inline Zone random_straight_walk() {
  const double width = in_range(0.8, 1.8);
  return walk_along({{0, 0}, {width * in_range(1.0, 30.0), 0}}, width);
}

/// An arc of 20 to 180 degrees with a point about every 6 degrees and a radius of at least 3
/// widths.
inline Zone random_curved_walk() {
  const double width = in_range(0.8, 1.8);
  const double radius = width * in_range(3.0, 15.0);
  const double whole = in_range(20.0, 180.0);
  const int pieces = static_cast<int>(std::ceil(whole / 6.0));
  std::vector<Point> line;
  for (int i = 0; i <= pieces; ++i) {
    const double angle = whole * i / pieces * std::numbers::pi / 180.0;
    line.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  return walk_along(std::move(line), width);
}

}  // namespace slabtide::test
