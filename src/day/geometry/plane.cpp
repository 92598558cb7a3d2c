#include "plane.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

namespace slabtide::plane {

Vector from_to(Point a, Point b) { return {b.x_m - a.x_m, b.y_m - a.y_m}; }

double length(Vector v) { return std::sqrt(dot(v, v)); }

Vector unit(Vector v) {
  const double long_m = length(v);
  if (!(long_m > 0.0)) throw std::invalid_argument("a direction needs a length");
  return {v.x / long_m, v.y / long_m};
}

Point moved(Point point, Vector by, double times) {
  return {point.x_m + by.x * times, point.y_m + by.y * times};
}

double distance(Point a, Point b) { return length(from_to(a, b)); }

Point nearest_on(const Joint& segment, Point point) {
  const Vector along = from_to(segment.from, segment.to);
  const double squared = dot(along, along);
  if (!(squared > 0.0)) return segment.from;
  const double fraction = std::clamp(dot(from_to(segment.from, point), along) / squared, 0.0, 1.0);
  return moved(segment.from, along, fraction);
}

double distance(Point point, const Joint& segment) {
  return distance(point, nearest_on(segment, point));
}

Point middle(const Joint& segment) {
  return moved(segment.from, from_to(segment.from, segment.to), 0.5);
}

double length_m(const Joint& segment) { return distance(segment.from, segment.to); }

Joint side(const Outline& outline, std::size_t i) {
  return {outline[i], outline[i + 1 < outline.size() ? i + 1 : 0]};
}

bool encloses(const Outline& outline, Point place) {
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Joint one = side(outline, i);
    const bool spans = (one.from.y_m > place.y_m) != (one.to.y_m > place.y_m);
    if (!spans) continue;
    const double fraction = (place.y_m - one.from.y_m) / (one.to.y_m - one.from.y_m);
    if (place.x_m < one.from.x_m + fraction * (one.to.x_m - one.from.x_m)) inside = !inside;
  }
  return inside;
}

double distance_to_sides(Point point, const Outline& outline) {
  double nearest_m2 = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vector away = from_to(point, nearest_on(side(outline, i), point));
    nearest_m2 = std::min(nearest_m2, dot(away, away));
  }
  return std::sqrt(nearest_m2);
}

}  // namespace slabtide::plane
