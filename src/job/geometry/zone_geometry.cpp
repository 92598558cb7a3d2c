#include "zone_geometry.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <stdexcept>

#include <fmt/format.h>
#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/ring.hpp>
#include <boost/geometry/geometries/segment.hpp>

#include "clipping.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(slabtide::Point, double, boost::geometry::cs::cartesian, x_m, y_m)

// Registers Outline as a Boost ring: it is queried thousands of times and must not be copied.
namespace boost::geometry::traits {

template <>
struct tag<slabtide::Outline> {
  using type = ring_tag;
};

template <>
struct point_order<slabtide::Outline> {
  static constexpr order_selector value = counterclockwise;
};

template <>
struct closure<slabtide::Outline> {
  static constexpr closure_selector value = open;
};

}  // namespace boost::geometry::traits

namespace slabtide {

namespace {

namespace bg = boost::geometry;

constexpr bool clockwise = false;
constexpr bool closed = false;

using Ring = bg::model::ring<Point, clockwise, closed>;
using Polygon = bg::model::polygon<Point, clockwise, closed>;
using Line = bg::model::linestring<Point>;
using Segment = bg::model::segment<Point>;

Ring ring_of(const Outline& outline) { return {outline.begin(), outline.end()}; }

Polygon polygon_of(const Outline& outline) {
  Polygon polygon;
  polygon.outer() = ring_of(outline);
  bg::correct(polygon);
  return polygon;
}

/// An outline smaller than this has no area that anyone would pour.
constexpr double min_area_m2 = 0.01;
/// No site drawing extends further from its origin; beyond this, coordinates lose precision.
constexpr double farthest_m = 1e5;

/// A vector, of unit length or not.
struct Vector {
  double x = 0.0;
  double y = 0.0;
};

Vector direction(Point from, Point to) {
  const double dx = to.x_m - from.x_m;
  const double dy = to.y_m - from.y_m;
  const double length = std::hypot(dx, dy);
  return {dx / length, dy / length};
}

Point moved(Point point, Vector by, double distance_m) {
  return {point.x_m + by.x * distance_m, point.y_m + by.y * distance_m};
}

Vector left_normal(Vector v) { return {-v.y, v.x}; }

/// From a bend to its left mitre point, for an offset of one: the sum of the two normals over (1 +
/// their dot product). A line that doubles back has no mitre; the normal is used instead, and the
/// outline then touches itself.
Vector mitre(Vector before, Vector after) {
  const Vector a = left_normal(before);
  const Vector b = left_normal(after);
  const double scale = 1.0 + a.x * b.x + a.y * b.y;
  constexpr double doubles_back = 1e-9;
  if (scale < doubles_back) return a;
  return {(a.x + b.x) / scale, (a.y + b.y) / scale};
}

/// The turn at `b` on the way from `a` to `c`; a left turn is positive.
double turn_rad(Point a, Point b, Point c) {
  const Vector before = direction(a, b);
  const Vector after = direction(b, c);
  return std::atan2(before.x * after.y - before.y * after.x,
                    before.x * after.x + before.y * after.y);
}

bool on_the_plan(Point point) {
  return std::abs(point.x_m) <= farthest_m && std::abs(point.y_m) <= farthest_m;
}

bool on_the_plan(const Outline& points) {
  return std::all_of(points.begin(), points.end(), [](Point point) { return on_the_plan(point); });
}

void check_on_plan(const Outline& points) {
  if (!on_the_plan(points)) {
    throw std::invalid_argument("a point's place is no number, or lies beyond any plan");
  }
}

void check_outline(const Outline& outline) {
  if (const auto fault = outline_fault(outline)) {
    throw std::invalid_argument("the outline cannot be used: " + *fault);
  }
}

void check_walkway(const Walkway& path) {
  check_on_plan(path.line);
  if (path.line.size() < 2) throw std::invalid_argument("a walk needs two points or more");
  if (!(path.width_m > 0.0 && path.width_m <= farthest_m)) {
    throw std::invalid_argument("a walk's width must be positive, and no wider than any plan");
  }
  for (std::size_t i = 1; i < path.line.size(); ++i) {
    if (path.line[i] == path.line[i - 1]) {
      throw std::invalid_argument("a walk has two equal points in a row");
    }
  }
}

Segment side(const Outline& outline, std::size_t i) {
  return {outline[i], outline[(i + 1) % outline.size()]};
}

/// Whether the bounding boxes of two sides meet: a cheap test that most pairs fail.
bool boxes_meet(const Segment& a, const Segment& b) {
  const auto meet = [&](double Point::*axis) {
    const auto [a_low, a_high] = std::minmax(a.first.*axis, a.second.*axis);
    const auto [b_low, b_high] = std::minmax(b.first.*axis, b.second.*axis);
    return a_low <= b_high && b_low <= a_high;
  };
  return meet(&Point::x_m) && meet(&Point::y_m);
}

/// Names the first two non-adjacent sides that meet.
std::optional<std::string> crossing_sides(const Outline& outline) {
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Segment one = side(outline, i);
    for (std::size_t j = i + 2; j < n; ++j) {
      const bool neighbours = i == 0 && j == n - 1;
      const Segment other = side(outline, j);
      if (neighbours || !boxes_meet(one, other) || !bg::intersects(one, other)) continue;
      return fmt::format("the side from point {} to {} meets the side from point {} to {}", i + 1,
                         i + 2, j + 1, (j + 1) % n + 1);
    }
  }
  return std::nullopt;
}

std::optional<std::string> repeated_point(const Outline& outline) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const std::size_t next = (i + 1) % outline.size();
    if (outline[i] == outline[next]) {
      return fmt::format("points {} and {} are the same", i + 1, next + 1);
    }
  }
  return std::nullopt;
}

Line sides_of(const Outline& outline) {
  Line sides(outline.begin(), outline.end());
  sides.push_back(outline.front());
  return sides;
}

/// When a buffer shrinks a region to nothing it can leave spurious regions that are nearer to the
/// sides than they should be; this rejects those.
bool keeps_its_distance(const Outline& region, const Line& sides, double width_m) {
  constexpr double slack_m = 1e-3;
  return std::all_of(region.begin(), region.end(), [&](const Point& point) {
    return bg::distance(point, sides) > width_m - slack_m;
  });
}

/// A triangle of a fan around `hub`, counter-clockwise, with the sign it counts with.
struct Triangle {
  Outline corners;
  double sign = 1.0;
};

Triangle triangle(Point hub, const Segment& side) {
  Outline corners{hub, side.first, side.second};
  if (clipping::moments_of(corners, hub).area_m2 >= 0.0) return {corners, 1.0};
  return {{hub, side.second, side.first}, -1.0};
}

/// The half-plane to the left of the line from `a` to `b`.
clipping::HalfPlane left_of(Point a, Point b) {
  const double x = a.y_m - b.y_m;
  const double y = b.x_m - a.x_m;
  return {x, y, x * a.x_m + y * a.y_m};
}

double shared_m2_signed(const Triangle& a, const Triangle& b) {
  Outline shared = a.corners;
  for (std::size_t i = 0; i < 3; ++i) {
    shared = clipping::clipped(shared, left_of(b.corners[i], b.corners[(i + 1) % 3]));
  }
  if (shared.empty()) return 0.0;
  return a.sign * b.sign * clipping::moments_of(shared, shared.front()).area_m2;
}

}  // namespace

double area_m2(const Outline& outline) {
  check_on_plan(outline);
  return std::abs(bg::area(ring_of(outline)));
}

double perimeter_m(const Outline& outline) {
  check_on_plan(outline);
  return static_cast<double>(bg::perimeter(ring_of(outline)));
}

Point centroid(const Outline& outline) {
  check_on_plan(outline);
  if (outline.empty()) throw std::invalid_argument("no points, no middle");
  Point centre;
  bg::centroid(polygon_of(outline), centre);
  return centre;
}

bool contains(const Outline& outline, Point point) {
  check_on_plan(outline);
  check_on_plan({point});
  return bg::covered_by(point, outline);
}

double outside_by_m(const Outline& outline, Point point) {
  check_on_plan(outline);
  check_on_plan({point});
  if (outline.empty()) throw std::invalid_argument("no points, no distance");
  return bg::distance(point, polygon_of(outline));
}

Outline counter_clockwise(Outline outline) {
  check_on_plan(outline);
  if (bg::area(ring_of(outline)) < 0.0) {
    std::reverse(outline.begin() + 1, outline.end());
  }
  return outline;
}

std::optional<std::string> walkway_fault(const Walkway& path) {
  check_walkway(path);
  const auto& line = path.line;
  // The length the inner edge loses at a bend: half the width times the tangent of half the turn.
  std::vector<double> lost_m(line.size(), 0.0);  // positive: on the left
  for (std::size_t i = 1; i + 1 < line.size(); ++i) {
    const double half_turn = turn_rad(line[i - 1], line[i], line[i + 1]) / 2.0;
    lost_m[i] = path.width_m / 2.0 * std::tan(half_turn);
  }
  for (std::size_t i = 1; i < line.size(); ++i) {
    const double straight_m = bg::distance(line[i - 1], line[i]);
    if (std::abs(lost_m[i - 1] + lost_m[i]) < straight_m) continue;
    return fmt::format("between points {} and {} it bends tighter than its width allows", i, i + 1);
  }
  return std::nullopt;
}

Outline outline_of_walkway(const Walkway& path) {
  check_walkway(path);
  const auto& line = path.line;
  const std::size_t n = line.size();
  Outline right;
  Outline left;
  for (std::size_t i = 0; i < n; ++i) {
    const Vector before = direction(line[i == 0 ? 0 : i - 1], line[i == 0 ? 1 : i]);
    const Vector after = direction(line[i + 1 < n ? i : n - 2], line[i + 1 < n ? i + 1 : n - 1]);
    const Vector sideways = mitre(before, after);
    right.push_back(moved(line[i], sideways, -path.width_m / 2.0));
    left.push_back(moved(line[i], sideways, path.width_m / 2.0));
  }
  right.insert(right.end(), left.rbegin(), left.rend());
  return right;
}

std::optional<std::string> outline_fault(const Outline& outline) {
  if (outline.size() < 3) {
    return fmt::format("an outline needs three points or more, got {}", outline.size());
  }
  if (!on_the_plan(outline)) return "a corner's place is no number, or lies beyond any plan";
  if (auto repeated = repeated_point(outline)) return repeated;
  if (auto crossing = crossing_sides(outline)) return "it crosses or touches itself: " + *crossing;
  if (!(area_m2(outline) >= min_area_m2)) return "it encloses no area";
  return std::nullopt;
}

std::vector<Outline> inset(const Outline& outline, double width_m) {
  check_outline(outline);
  if (!(width_m > 0.0)) throw std::invalid_argument("a strip's width must be positive");
  if (width_m > perimeter_m(outline)) return {};
  namespace strategy = bg::strategy::buffer;
  constexpr double mitre_limit = 3.0;  // as a multiple of the width; sharper corners are bevelled
  bg::model::multi_polygon<Polygon> shrunk;
  bg::buffer(polygon_of(outline), shrunk, strategy::distance_symmetric<double>(-width_m),
             strategy::side_straight(), strategy::join_miter(mitre_limit), strategy::end_flat(),
             strategy::point_square());
  const Line sides = sides_of(outline);
  std::vector<Outline> regions;
  for (const auto& polygon : shrunk) {
    Outline region(polygon.outer().begin(), polygon.outer().end());
    if (keeps_its_distance(region, sides, width_m)) regions.push_back(std::move(region));
  }
  return regions;
}

bool border_fits(const Outline& outline, double width_m) {
  return !inset(outline, width_m).empty();
}

double shared_area_m2(const Outline& a, const Outline& b) {
  check_outline(a);
  check_outline(b);
  // Both outlines as fans of signed triangles about one point: the shared area is the sum, over all
  // pairs of triangles, of the area they share times both signs.
  const Point hub = a.front();
  double shared_m2 = 0.0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    const auto first = triangle(hub, side(a, i));
    for (std::size_t j = 0; j < b.size(); ++j) {
      shared_m2 += shared_m2_signed(first, triangle(hub, side(b, j)));
    }
  }
  return std::abs(shared_m2);
}

double mean_width_m(const Outline& outline) {
  const double half_around_m = perimeter_m(outline) / 2.0;
  const double over = half_around_m * half_around_m - 4.0 * area_m2(outline);
  return (half_around_m - std::sqrt(std::max(0.0, over))) / 2.0;
}

double line_length_m(const Walkway& path) {
  check_on_plan(path.line);
  double length = 0.0;
  for (std::size_t i = 1; i < path.line.size(); ++i) {
    length += bg::distance(path.line[i - 1], path.line[i]);
  }
  return length;
}

double reach_m(const Outline& outline) {
  if (outline.empty()) throw std::invalid_argument("outline: no points");
  const auto span_m = [&](double Point::*axis) {
    const auto [low, high] = std::minmax_element(
        outline.begin(), outline.end(), [axis](Point a, Point b) { return a.*axis < b.*axis; });
    return (*high).*axis - (*low).*axis;
  };
  return std::max(span_m(&Point::x_m), span_m(&Point::y_m));
}

double distance_along_m(const Walkway& path, Point point) {
  check_walkway(path);
  check_on_plan({point});
  double before_m = 0.0;
  double nearest_m = std::numeric_limits<double>::infinity();
  double along_m = 0.0;
  for (std::size_t i = 1; i < path.line.size(); ++i) {
    const Point from = path.line[i - 1];
    const double length_m = bg::distance(from, path.line[i]);
    const Vector ahead = direction(from, path.line[i]);
    const double forward_m = (point.x_m - from.x_m) * ahead.x + (point.y_m - from.y_m) * ahead.y;
    const double on_it_m = std::clamp(forward_m, 0.0, length_m);
    const double away_m = bg::distance(point, moved(from, ahead, on_it_m));
    if (away_m < nearest_m) {
      nearest_m = away_m;
      along_m = before_m + on_it_m;
    }
    before_m += length_m;
  }
  return along_m;
}

double volume_m3(const Zone& zone) {
  double volume = area_m2(zone.outline) * zone.thickness_m + zone.extra_volume_m3;
  for (const auto& face : zone.faces) {
    const double below_m = std::max(0.0, face.height_m - zone.thickness_m);
    volume += face.length_m * below_m * face.tread_m;
  }
  return volume;
}

}  // namespace slabtide
