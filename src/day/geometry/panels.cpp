#include "slabtide/day/geometry/panels.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <utility>

#include "faces.h"
#include "job/geometry/zone_geometry.h"
#include "plane.h"

namespace slabtide {

namespace {

using plane::Vector;

double extent(const Outline& outline, Vector direction) {
  double min = std::numeric_limits<double>::infinity();
  double max = -min;
  for (const Point& corner : outline) {
    const double at = direction.x * corner.x_m + direction.y * corner.y_m;
    min = std::min(min, at);
    max = std::max(max, at);
  }
  return max - min;
}

void put_smallest_box(Panel& panel) {
  double smallest_m2 = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < panel.outline.size(); ++i) {
    const Joint side = plane::side(panel.outline, i);
    if (side.from == side.to) continue;
    Vector along = plane::unit(plane::from_to(side.from, side.to));
    double length_m = extent(panel.outline, along);
    double width_m = extent(panel.outline, plane::left_of(along));
    // Slightly smaller is rounding, not a better box.
    constexpr double hair_m2 = 1e-9;
    if (length_m * width_m > smallest_m2 - hair_m2) continue;
    smallest_m2 = length_m * width_m;
    if (length_m < width_m) {
      std::swap(length_m, width_m);
      along = plane::left_of(along);
    }
    panel.length_m = length_m;
    panel.width_m = width_m;
    panel.along_x = along.x;
    panel.along_y = along.y;
  }
}

void check(const Outline& outline, const std::vector<Joint>& joints) {
  if (outline.size() < 3) throw std::invalid_argument("an outline needs three points or more");
  perimeter_m(outline);  // throws for impossible points
  for (const Joint& joint : joints) perimeter_m({joint.from, joint.to});
}

}  // namespace

double extent_m(const Panel& panel, double x, double y) {
  constexpr double rounding = 1e-6;
  if (!(std::abs(std::hypot(x, y) - 1.0) < rounding)) {
    throw std::invalid_argument("the direction is not of length 1");
  }
  if (panel.outline.empty()) throw std::invalid_argument("the panel has no outline");
  return extent(panel.outline, {x, y});
}

Panel panel_of(Outline outline) {
  if (outline.size() < 3) throw std::invalid_argument("a panel needs three points or more");
  Panel panel;
  panel.area_m2 = area_m2(outline);
  panel.outline = std::move(outline);
  panel.centre = centroid(panel.outline);
  put_smallest_box(panel);
  return panel;
}

Panels split_into_panels(const Outline& outline, const std::vector<Joint>& joints) {
  check(outline, joints);
  faces::Faces cut = faces::cut(outline, joints);
  Panels split;
  for (faces::Face& face : cut.faces) {
    Panel panel = panel_of(std::move(face.ring));
    panel.area_m2 = face.area_m2;
    split.panels.push_back(std::move(panel));
  }
  split.loose_joints = std::move(cut.loose);
  return split;
}

}  // namespace slabtide
