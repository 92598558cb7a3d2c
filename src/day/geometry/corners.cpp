#include "corners.h"

#include <cmath>
#include <numbers>

#include "job/geometry/zone_geometry.h"
#include "plane.h"

namespace slabtide {

namespace {

constexpr double at_corner_m = 0.02;
constexpr double min_turn_rad = 20.0 * std::numbers::pi / 180.0;

}  // namespace

std::vector<Point> re_entrant_corners(const Outline& outline) {
  perimeter_m(outline);  // throws for impossible points
  std::vector<Point> corners;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Joint before = plane::side(outline, i);
    const Joint after = plane::side(outline, i + 1 < outline.size() ? i + 1 : 0);
    const plane::Vector in = plane::from_to(before.from, before.to);
    const plane::Vector out = plane::from_to(after.from, after.to);
    const double turn_rad = std::atan2(plane::cross(in, out), plane::dot(in, out));
    if (turn_rad < -min_turn_rad) corners.push_back(before.to);
  }
  return corners;
}

bool relieves(const Joint& joint, Point corner) {
  return plane::distance(corner, joint) < at_corner_m;
}

}  // namespace slabtide
