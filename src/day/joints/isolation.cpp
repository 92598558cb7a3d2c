#include "slabtide/day/joints/isolation.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include <fmt/format.h>

#include "core/rounded.h"
#include "day/geometry/plane.h"
#include "job/geometry/compass.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double beside_m = 0.15;
/// More than for an isolation joint, because a tie may be drawn less carefully and dowels have
/// length.
constexpr double tied_within_m = 0.6;
/// A shorter stretch is a wall that ends at the slab.
constexpr double min_length_m = 0.3;
constexpr double step_m = 0.05;

/// A side more than 60 degrees from the wall's direction runs up to the wall, not along it.
constexpr double along_cosine = 0.5;

bool runs_along(const Joint& side, const Joint& wall) {
  const plane::Vector a = plane::from_to(side.from, side.to);
  const plane::Vector b = plane::from_to(wall.from, wall.to);
  return std::abs(plane::dot(a, b)) > along_cosine * plane::length(a) * plane::length(b);
}

/// How much of the sides is within `near_m` of a wall and runs along it.
double length_beside_m(const std::vector<Joint>& sides, const Joint& wall, double near_m) {
  double sum_m = 0.0;
  for (const Joint& side : sides) {
    if (!runs_along(side, wall)) continue;
    const double long_m = plane::length_m(side);
    if (plane::distance(plane::middle(side), wall) > long_m + near_m) continue;
    const int steps = std::max(1, static_cast<int>(std::lround(long_m / step_m)));
    const plane::Vector along = plane::from_to(side.from, side.to);
    for (int k = 0; k < steps; ++k) {
      const Point at = plane::moved(side.from, along, (k + 0.5) / steps);
      if (plane::distance(at, wall) < near_m) sum_m += long_m / steps;
    }
  }
  return sum_m;
}

std::vector<Isolation> walls_beside(const std::vector<Joint>& sides,
                                    const std::vector<Obstacle>& obstacles, double near_m) {
  std::vector<Isolation> found;
  for (const Obstacle& obstacle : obstacles) {
    if (obstacle.kind != ObstacleKind::wall) continue;
    const Joint wall{obstacle.from, obstacle.to};
    const double length_m = length_beside_m(sides, wall, near_m);
    const std::string name = obstacle.name.empty() ? "the wall" : obstacle.name;
    if (length_m >= min_length_m) found.push_back({name, length_m, false, wall});
  }
  return found;
}

bool is_same(const Joint& a, const Joint& b) {
  return (a.from == b.from && a.to == b.to) || (a.from == b.to && a.to == b.from);
}

/// The sides of a zone, counter-clockwise, that it names as tied, or the others.
std::vector<Joint> sides_of(const Zone& zone, bool tied) {
  std::vector<Joint> sides;
  for (std::size_t i = 0; i < zone.outline.size(); ++i) {
    const Joint side = plane::side(zone.outline, i);
    const bool named = std::any_of(zone.tied_edges.begin(), zone.tied_edges.end(),
                                   [&side](const Joint& edge) { return is_same(edge, side); });
    if (named == tied) sides.push_back(side);
  }
  return sides;
}

/// What a side without a wall is tied to.
std::string structure_at(const Joint& side) {
  const plane::Vector along = plane::from_to(side.from, side.to);
  const double outward_deg = std::atan2(along.y, -along.x) / radians_per_degree;
  return fmt::format("the structure to the {}", compass_word(outward_deg));
}

/// The wall that these sides run beside longest, near enough to be tied to.
std::optional<Isolation> wall_to_tie_to(const std::vector<Joint>& sides,
                                        const std::vector<Obstacle>& obstacles) {
  const std::vector<Isolation> near = walls_beside(sides, obstacles, tied_within_m);
  const auto longest =
      std::max_element(near.begin(), near.end(), [](const Isolation& a, const Isolation& b) {
        return rounded(a.length_m) < rounded(b.length_m);
      });
  return longest == near.end() ? std::nullopt : std::optional(*longest);
}

/// Each edge that the zone names, with what it is tied to.
std::vector<Isolation> tied_edges(const Zone& zone, const std::vector<Obstacle>& obstacles) {
  std::vector<Isolation> ties;
  for (const Joint& side : sides_of(zone, true)) {
    const auto wall = wall_to_tie_to({side}, obstacles);
    ties.push_back(
        {wall ? wall->structure : structure_at(side), plane::length_m(side), true, side});
  }
  return ties;
}

/// What a zone is tied to that does not say by which edges.
Isolation guessed_tie(const Zone& zone, const std::vector<Obstacle>& obstacles) {
  const auto wall = wall_to_tie_to(sides_of(zone, false), obstacles);
  if (!wall) return {"the structure", 0.0, true, {}};
  return {wall->structure, wall->length_m, true, wall->wall};
}

bool is_tied_at(const std::vector<Isolation>& isolation, Point place) {
  return std::any_of(isolation.begin(), isolation.end(), [place](const Isolation& one) {
    if (!one.tied) return false;
    return one.length_m == 0.0 || plane::distance(place, one.wall) < tied_within_m;
  });
}

}  // namespace

std::vector<Isolation> find_isolation(const Zone& zone, const std::vector<Obstacle>& obstacles) {
  perimeter_m(zone.outline);  // throws for impossible points
  for (const Obstacle& obstacle : obstacles) perimeter_m({obstacle.from, obstacle.to});
  std::vector<Isolation> walls = walls_beside(sides_of(zone, false), obstacles, beside_m);
  if (!zone.tied) return walls;
  std::vector<Isolation> found = tied_edges(zone, obstacles);
  const bool guessed = found.empty();
  if (guessed) found.push_back(guessed_tie(zone, obstacles));
  for (const Isolation& wall : walls) {
    if (!guessed || wall.structure != found.front().structure) found.push_back(wall);
  }
  return found;
}

bool shows_tied_edge(const std::vector<Isolation>& isolation) {
  return std::any_of(isolation.begin(), isolation.end(),
                     [](const Isolation& one) { return one.tied && one.length_m > 0.0; });
}

bool at_tied_edge(const std::vector<Isolation>& isolation, Point place) {
  perimeter_m({place});  // throws for impossible points
  return is_tied_at(isolation, place);
}

bool reaches_tied_edge(const std::vector<Isolation>& isolation, const Outline& piece) {
  perimeter_m(piece);  // throws for impossible points
  const auto near_wall = [&isolation](Point corner) { return is_tied_at(isolation, corner); };
  if (std::any_of(piece.begin(), piece.end(), near_wall)) return true;
  return std::any_of(isolation.begin(), isolation.end(), [&piece](const Isolation& one) {
    return one.tied && (plane::distance_to_sides(one.wall.from, piece) < tied_within_m ||
                        plane::distance_to_sides(one.wall.to, piece) < tied_within_m);
  });
}

}  // namespace slabtide
