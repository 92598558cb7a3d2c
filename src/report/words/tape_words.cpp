#include "tape_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "day/geometry/plane.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

using plane::from_to;
using plane::Vector;

/// What lies within this of an end is at it: a form's thickness and a drawing's slips (ours).
constexpr double at_end_m = 0.35;

/// An end of a zone: how far it is, where, and which way it looks.
struct ZoneEnd {
  double distance_m = 0.0;
  Point at;
  Vector outward;
};

std::optional<std::string> structure_at(Point at, const Job& job) {
  for (const Obstacle& one : job.obstacles) {
    if (one.kind != ObstacleKind::wall || one.name.empty()) continue;
    if (plane::distance(at, Joint{one.from, one.to}) <= at_end_m) return one.name;
  }
  return std::nullopt;
}

std::optional<std::string> neighbor_at(Point at, std::size_t own, const Job& job) {
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    if (i == own) continue;
    if (plane::distance_to_sides(at, job.zones[i].outline) <= at_end_m) return job.zones[i].name;
  }
  return std::nullopt;
}

std::string compass_name(Vector outward) {
  return compass_words(std::atan2(outward.x, outward.y) / radians_per_degree);
}

/// The farthest of the outline in a direction from a point; the middle of all that is as far.
ZoneEnd end_toward(const Outline& ring, Point from, Vector outward) {
  constexpr double as_far_m = 0.02;
  double farthest_m = 0.0;
  for (const Point& p : ring)
    farthest_m = std::max(farthest_m, plane::dot(from_to(from, p), outward));
  ZoneEnd end{farthest_m, {}, outward};
  double count = 0.0;
  for (const Point& p : ring) {
    if (plane::dot(from_to(from, p), outward) < farthest_m - as_far_m) continue;
    end.at.x_m += p.x_m;
    end.at.y_m += p.y_m;
    count += 1.0;
  }
  if (count > 0.0) end.at = {end.at.x_m / count, end.at.y_m / count};
  return end;
}

/// Both ends of a walkway, along its line from where the joint crosses it.
std::vector<ZoneEnd> ends_of_walk(const Walkway& path, Point crossing) {
  const std::vector<Point>& line = path.line;
  const double before_m = distance_along_m(path, crossing);
  const double after_m = line_length_m(path) - before_m;
  const std::size_t last = line.size() - 1;
  return {{before_m, line.front(), plane::unit(from_to(line[1], line.front()))},
          {after_m, line.back(), plane::unit(from_to(line[last - 1], line.back()))}};
}

/// True if the joint runs across the walkway rather than along it.
bool crosses(const Joint& joint, const std::vector<Point>& line) {
  const Point at = plane::middle(joint);
  Joint nearest{line[0], line[1]};
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const Joint leg{line[i], line[i + 1]};
    if (plane::distance(at, leg) < plane::distance(at, nearest)) nearest = leg;
  }
  const Vector along = plane::unit(from_to(nearest.from, nearest.to));
  const Vector across = plane::unit(from_to(joint.from, joint.to));
  return std::abs(plane::dot(across, along)) < std::numbers::sqrt2 / 2.0;
}

/// The ends that the joint may be measured from, the one to be preferred among equals first.
std::vector<ZoneEnd> ends_of(const Joint& joint, const Zone& zone) {
  const Point middle = plane::middle(joint);
  if (zone.path && crosses(joint, zone.path->line)) return ends_of_walk(*zone.path, middle);
  Vector square = plane::left_of(plane::unit(from_to(joint.from, joint.to)));
  constexpr double level = 1e-6;
  const bool north = square.y > level || (square.y > -level && square.x > 0.0);
  if (!north) square = {-square.x, -square.y};
  return {end_toward(zone.outline, middle, square),
          end_toward(zone.outline, middle, {-square.x, -square.y})};
}

}  // namespace

std::string tape_length_words(double m, UnitSystem units) {
  if (units == UnitSystem::si) return fmt::format("{:.2f} m", m);
  constexpr long inches_per_foot = 12;
  const long inches = std::lround(ft_from_m(m) * static_cast<double>(inches_per_foot));
  const long feet = inches / inches_per_foot;
  const long rest = inches % inches_per_foot;
  if (feet == 0) return fmt::format("{} in", rest);
  return rest == 0 ? fmt::format("{} ft", feet) : fmt::format("{} ft {} in", feet, rest);
}

std::string tape_words(const Joint& joint, std::size_t zone, const Job& job) {
  const std::vector<ZoneEnd> ends = ends_of(joint, job.zones.at(zone));
  const auto said = [&job](const ZoneEnd& end, const std::string& name) {
    return fmt::format("{} from the {} end", tape_length_words(end.distance_m, job.units), name);
  };
  for (const ZoneEnd& end : ends) {
    if (const auto name = structure_at(end.at, job)) return said(end, *name);
  }
  for (const ZoneEnd& end : ends) {
    if (const auto name = neighbor_at(end.at, zone, job)) return said(end, *name);
  }
  return said(ends.front(), compass_name(ends.front().outward));
}

}  // namespace slabtide
