#include "tape_words.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "slabtide/core/units.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

namespace {

/// What lies within this of an end is at it: a form's thickness and a drawing's slips (ours).
constexpr double at_end_m = 0.35;

Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
double length(Point a) { return std::hypot(a.x_m, a.y_m); }
Point middle(const Joint& joint) {
  return {(joint.from.x_m + joint.to.x_m) / 2.0, (joint.from.y_m + joint.to.y_m) / 2.0};
}

Point unit(Point a) {
  const double size = length(a);
  return size > 0.0 ? Point{a.x_m / size, a.y_m / size} : Point{0.0, 1.0};
}

/// The share of the segment at which it comes nearest to the point, 0 to 1.
double nearest_share(Point p, Point from, Point to) {
  const Point along = minus(to, from);
  const double square = dot(along, along);
  return square > 0.0 ? std::clamp(dot(minus(p, from), along) / square, 0.0, 1.0) : 0.0;
}

double segment_distance_m(Point p, Point from, Point to) {
  const double share = nearest_share(p, from, to);
  const Point along = minus(to, from);
  return length(minus(p, {from.x_m + share * along.x_m, from.y_m + share * along.y_m}));
}

/// An end of a zone: how far it is, where, and which way it looks.
struct ZoneEnd {
  double distance_m = 0.0;
  Point at;
  Point outward;
};

std::optional<std::string> structure_at(Point at, const Job& job) {
  for (const Obstacle& one : job.obstacles) {
    if (one.kind != ObstacleKind::wall || one.name.empty()) continue;
    if (segment_distance_m(at, one.from, one.to) <= at_end_m) return one.name;
  }
  return std::nullopt;
}

std::optional<std::string> neighbor_at(Point at, std::size_t own, const Job& job) {
  for (std::size_t i = 0; i < job.zones.size(); ++i) {
    const Outline& ring = job.zones[i].outline;
    for (std::size_t k = 0; i != own && k < ring.size(); ++k) {
      if (segment_distance_m(at, ring[k], ring[(k + 1) % ring.size()]) <= at_end_m) {
        return job.zones[i].name;
      }
    }
  }
  return std::nullopt;
}

std::string compass_name(Point outward) {
  return compass_words(std::atan2(outward.x_m, outward.y_m) * 180.0 / std::numbers::pi);
}

/// The farthest of the outline in a direction from a point; the middle of all that is as far.
ZoneEnd end_toward(const Outline& ring, Point from, Point outward) {
  constexpr double as_far_m = 0.02;
  double farthest_m = 0.0;
  for (const Point& p : ring) farthest_m = std::max(farthest_m, dot(minus(p, from), outward));
  ZoneEnd end{farthest_m, {}, outward};
  double count = 0.0;
  for (const Point& p : ring) {
    if (dot(minus(p, from), outward) < farthest_m - as_far_m) continue;
    end.at.x_m += p.x_m;
    end.at.y_m += p.y_m;
    count += 1.0;
  }
  if (count > 0.0) end.at = {end.at.x_m / count, end.at.y_m / count};
  return end;
}

/// Both ends of a walkway, along its line from where the joint crosses it.
std::vector<ZoneEnd> ends_of_walk(const std::vector<Point>& line, Point crossing) {
  double before_m = 0.0;
  double whole_m = 0.0;
  double nearest_m = -1.0;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const double size_m = length(minus(line[i + 1], line[i]));
    const double off_m = segment_distance_m(crossing, line[i], line[i + 1]);
    if (nearest_m < 0.0 || off_m < nearest_m) {
      nearest_m = off_m;
      before_m = whole_m + nearest_share(crossing, line[i], line[i + 1]) * size_m;
    }
    whole_m += size_m;
  }
  const std::size_t last = line.size() - 1;
  return {{before_m, line.front(), unit(minus(line.front(), line[1]))},
          {whole_m - before_m, line.back(), unit(minus(line[last], line[last - 1]))}};
}

/// True if the joint runs across the walkway rather than along it.
bool crosses(const Joint& joint, const std::vector<Point>& line) {
  const Point at = middle(joint);
  std::size_t best = 0;
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    if (segment_distance_m(at, line[i], line[i + 1]) <
        segment_distance_m(at, line[best], line[best + 1])) {
      best = i;
    }
  }
  const Point along = unit(minus(line[best + 1], line[best]));
  return std::abs(dot(unit(minus(joint.to, joint.from)), along)) < std::numbers::sqrt2 / 2.0;
}

/// The ends that the joint may be measured from, the one to be preferred among equals first.
std::vector<ZoneEnd> ends_of(const Joint& joint, const Zone& zone) {
  if (zone.path && zone.path->line.size() > 1 && crosses(joint, zone.path->line)) {
    return ends_of_walk(zone.path->line, middle(joint));
  }
  const Point along = unit(minus(joint.to, joint.from));
  Point square{-along.y_m, along.x_m};
  const bool north = square.y_m > 1e-6 || (square.y_m > -1e-6 && square.x_m > 0.0);
  if (!north) square = {-square.x_m, -square.y_m};
  return {end_toward(zone.outline, middle(joint), square),
          end_toward(zone.outline, middle(joint), {-square.x_m, -square.y_m})};
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
