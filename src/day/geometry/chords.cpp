#include "chords.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace slabtide::chords {

namespace {

using plane::cross;
using plane::dot;
using plane::from_to;
using plane::same_place_m;
using plane::Vector;

/// Where a line (a point and a unit direction) meets a segment, as distances along the line. For a
/// segment that runs along it: both its ends.
std::vector<double> meetings(Point start, Vector along, const Joint& segment) {
  const double before = cross(along, from_to(start, segment.from));
  const double after = cross(along, from_to(start, segment.to));
  const bool from_on_it = std::abs(before) < same_place_m;
  const bool to_on_it = std::abs(after) < same_place_m;
  std::vector<double> at_m;
  if (from_on_it) at_m.push_back(dot(along, from_to(start, segment.from)));
  if (to_on_it) at_m.push_back(dot(along, from_to(start, segment.to)));
  if (!from_on_it && !to_on_it && (before < 0.0) != (after < 0.0)) {
    const Point meets =
        plane::moved(segment.from, from_to(segment.from, segment.to), before / (before - after));
    at_m.push_back(dot(along, from_to(start, meets)));
  }
  return at_m;
}

/// Inside and not at a side.
bool strictly_inside(const Outline& outline, Point point) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Joint side = plane::side(outline, i);
    const auto [low_m, high_m] = std::minmax(side.from.y_m, side.to.y_m);
    if (point.y_m < low_m - same_place_m || point.y_m > high_m + same_place_m) continue;
    if (!(plane::distance(point, side) > same_place_m)) return false;
  }
  return plane::encloses(outline, point);
}

/// The ends of the line's sections between its crossings of the sides, from 0 to `long_m`.
std::vector<double> stops(const Outline& outline, Point start, Vector along, double long_m) {
  std::vector<double> at_m{0.0, long_m};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    for (const double meets : meetings(start, along, plane::side(outline, i))) {
      if (meets > 0.0 && meets < long_m) at_m.push_back(meets);
    }
  }
  std::sort(at_m.begin(), at_m.end());
  return at_m;
}

/// The first crossing ahead of `end`, at most `reach_m` away.
std::optional<double> ahead_m(Point end, Vector along, const Joint& segment, double reach_m) {
  std::optional<double> nearest;
  for (const double at : meetings(end, along, segment)) {
    if (at >= 0.0 && at <= reach_m) nearest = std::min(at, nearest.value_or(at));
  }
  return nearest;
}

bool lies_on(Point end, const Outline& outline, const std::vector<Joint>& others) {
  return plane::distance_to_sides(end, outline) < same_place_m ||
         std::any_of(others.begin(), others.end(), [end](const Joint& other) {
           return plane::distance(end, other) < same_place_m;
         });
}

Point reached(Point end, Vector along, const Outline& outline, const std::vector<Joint>& others,
              double reach_m) {
  if (lies_on(end, outline, others)) return end;
  std::optional<double> nearest;
  const auto look = [&](const Joint& segment) {
    if (const auto at = ahead_m(end, along, segment, reach_m)) {
      nearest = std::min(*at, nearest.value_or(*at));
    }
  };
  for (std::size_t i = 0; i < outline.size(); ++i) look(plane::side(outline, i));
  for (const Joint& other : others) look(other);
  return nearest ? plane::moved(end, along, *nearest) : end;
}

}  // namespace

std::vector<Joint> inside(const Outline& outline, const Joint& segment) {
  std::vector<Joint> parts;
  const double long_m = plane::length_m(segment);
  if (!(long_m > same_place_m)) return parts;
  const Vector along = plane::unit(from_to(segment.from, segment.to));
  const auto at = [&](double m) { return plane::moved(segment.from, along, m); };
  const std::vector<double> at_m = stops(outline, segment.from, along, long_m);
  bool goes_on = false;
  double last_m = at_m.front();
  for (const double stop_m : at_m) {
    if (stop_m - last_m < same_place_m) continue;
    const bool is_inside = strictly_inside(outline, at(0.5 * (last_m + stop_m)));
    if (is_inside && goes_on) parts.back().to = at(stop_m);
    if (is_inside && !goes_on) parts.push_back({at(last_m), at(stop_m)});
    goes_on = is_inside;
    last_m = stop_m;
  }
  return parts;
}

std::vector<Joint> across(const Outline& outline, Point through, Vector direction) {
  double far_m = 1.0;
  for (const Point& corner : outline) far_m += plane::distance(through, corner);
  const Vector along = plane::unit(direction);
  return inside(outline,
                {plane::moved(through, along, -far_m), plane::moved(through, along, far_m)});
}

Joint reaching(const Joint& joint, const Outline& outline, const std::vector<Joint>& others,
               double reach_m) {
  if (!(plane::length_m(joint) > same_place_m)) return joint;
  const Vector along = plane::unit(from_to(joint.from, joint.to));
  return {reached(joint.from, {-along.x, -along.y}, outline, others, reach_m),
          reached(joint.to, along, outline, others, reach_m)};
}

}  // namespace slabtide::chords
