#include "support/random_shape.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace slabtide::test {

namespace {

std::vector<Point> rectangle_ft(double w, double h) { return {{0, 0}, {w, 0}, {w, h}, {0, h}}; }

std::vector<Point> corner_ft(ByteSource& bytes, double w, double h) {
  const double x = w * bytes.between(0.2, 0.8);
  const double y = h * bytes.between(0.2, 0.8);
  return {{0, 0}, {w, 0}, {w, y}, {x, y}, {x, h}, {0, h}};
}

std::vector<Point> notched_ft(ByteSource& bytes, double w, double h) {
  const double left = w * bytes.between(0.1, 0.5);
  const double right = left + (w - left) * bytes.between(0.05, 0.8);
  const double y = h * bytes.between(0.1, 0.95);
  return {{0, 0}, {w, 0}, {w, h}, {right, h}, {right, y}, {left, y}, {left, h}, {0, h}};
}

/// Teeth along the top of a bar.
std::vector<Point> comb_ft(ByteSource& bytes, double w, double h) {
  const std::size_t teeth = 2 + bytes.below(5);
  const double bar = h * bytes.between(0.15, 0.6);
  const double pitch = w / static_cast<double>(2 * teeth - 1);
  std::vector<Point> points{{0, 0}, {w, 0}};
  for (std::size_t i = teeth; i-- > 0;) {
    const double left = pitch * static_cast<double>(2 * i);
    points.push_back({left + pitch, h});
    points.push_back({left, h});
    if (i > 0) {
      points.push_back({left, bar});
      points.push_back({left - pitch, bar});
    }
  }
  return points;
}

/// A round slab, or a star if every other corner is further in.
std::vector<Point> round_ft(ByteSource& bytes, double w, double h) {
  const std::size_t corners = 3 + bytes.below(30);
  const double inner = bytes.one_in(3) ? bytes.between(0.3, 1.0) : 1.0;
  std::vector<Point> points;
  for (std::size_t i = 0; i < corners; ++i) {
    const double turn =
        2.0 * std::numbers::pi * static_cast<double>(i) / static_cast<double>(corners);
    const double out = i % 2 == 0 ? 1.0 : inner;
    points.push_back({w / 2 * (1.0 + out * std::cos(turn)), h / 2 * (1.0 + out * std::sin(turn))});
  }
  return points;
}

std::vector<Point> wedge_ft(ByteSource& bytes, double w, double h) {
  return {{0, 0}, {w, 0}, {w * bytes.fraction(), h}};
}

std::vector<Point> skewed_ft(ByteSource& bytes, double w, double h) {
  const double a = bytes.between(0.0, 0.45);
  const double b = bytes.between(0.0, 0.45);
  return {{w * a, 0}, {w, h * b}, {w * (1 - a), h}, {0, h * (1 - b)}};
}

/// Corners cut off at 45 degrees, up to a diamond or an octagon.
std::vector<Point> chamfered_ft(ByteSource& bytes, double w, double h) {
  const double side = std::min(w, h);
  const double cut = side * (bytes.below(2) == 0 ? 0.5 : bytes.between(0.05, 0.49));
  std::vector<Point> points{{cut, 0}, {w, cut}, {w - cut, h}, {0, h - cut}};
  if (w - cut > cut) points.insert(points.begin() + 1, {w - cut, 0});
  if (h - cut > cut) points.insert(points.end() - 2, {w, h - cut});
  if (w - cut > cut) points.insert(points.end() - 1, {cut, h});
  if (h - cut > cut) points.push_back({0, cut});
  return points;
}

/// Shapes that cannot be built, or hardly can.
std::vector<Point> faulty_ft(ByteSource& bytes, double w, double h) {
  switch (bytes.below(7)) {
    case 0:
      return {{0, 0}, {w, h}, {w, 0}, {0, h}};
    case 1:
      return {};
    case 2:
      return {{0, 0}, {w, 0}};
    case 3:
      return {{0, 0}, {0, 0}, {w, 0}, {w, h}, {w, h}, {0, h}};
    case 4:
      return {{0, 0}, {w, 0}, {w / 2, 0}, {w / 2, h}};
    case 5:
      return {{0, 0}, {w, 0}, {w, h}, {0, h}, {0, 0}};
    default:
      return rectangle_ft(w, random_length_ft(bytes, 1e-6, 0.1));
  }
}

RandomShape walk_shape(ByteSource& bytes) {
  RandomShape shape;
  shape.is_path = true;
  shape.width_ft = random_length_ft(bytes, 0.5, 12.0);
  double x = 0.0;
  double y = 0.0;
  shape.points.push_back({x, y});
  const std::size_t legs = 1 + bytes.below(8);
  for (std::size_t i = 0; i < legs; ++i) {
    const double leg = random_length_ft(bytes, 2.0, 20.0);
    const double turn = bytes.one_in(3) ? bytes.between(-1.2, 1.2) : 0.0;
    x += leg * std::sin(turn);
    y += leg * std::cos(turn);
    shape.points.push_back({x, y});
  }
  double west = 0.0;
  for (const Point& point : shape.points) west = std::min(west, point.x_m);
  for (Point& point : shape.points) {
    point.x_m += shape.width_ft - west;
    shape.reach_x_ft = std::max(shape.reach_x_ft, point.x_m + shape.width_ft);
  }
  shape.reach_y_ft = y;
  return shape;
}

std::vector<Point> outline_ft(ByteSource& bytes, double w, double h) {
  switch (bytes.below(11)) {
    case 4:
      return chamfered_ft(bytes, w, h);
    case 5:
      return corner_ft(bytes, w, h);
    case 6:
      return notched_ft(bytes, w, h);
    case 7:
      return comb_ft(bytes, w, h);
    case 8:
      return round_ft(bytes, w, h);
    case 9:
      return wedge_ft(bytes, w, h);
    case 10:
      return skewed_ft(bytes, w, h);
    default:
      return rectangle_ft(w, h);
  }
}

}  // namespace

double random_length_ft(ByteSource& bytes, double low_ft, double high_ft) {
  const double length = low_ft * std::pow(high_ft / low_ft, bytes.fraction());
  // Coordinates are whole feet, whole inches, or anything.
  const std::size_t way = bytes.below(3);
  if (way == 0 && length >= 1.0) return std::round(length);
  return way == 1 && length >= 0.1 ? std::round(length * 12.0) / 12.0 : length;
}

RandomShape random_shape(ByteSource& bytes, bool faulty) {
  constexpr std::size_t one_walk_in = 4;
  constexpr std::size_t one_fault_in = 6;
  constexpr std::size_t one_narrow_in = 12;
  constexpr std::size_t one_large_in = 12;
  if (bytes.one_in(one_walk_in)) return walk_shape(bytes);
  RandomShape shape;
  // Small most of the time, because planning takes time in proportion to the area.
  const double max_ft = bytes.one_in(one_large_in) ? 60.0 : 20.0;
  shape.reach_x_ft = random_length_ft(bytes, 1.5, max_ft);
  shape.reach_y_ft = bytes.one_in(one_narrow_in) ? random_length_ft(bytes, 0.1, 2.0)
                                                 : random_length_ft(bytes, 1.5, max_ft);
  shape.points = faulty && bytes.one_in(one_fault_in)
                     ? faulty_ft(bytes, shape.reach_x_ft, shape.reach_y_ft)
                     : outline_ft(bytes, shape.reach_x_ft, shape.reach_y_ft);
  if (bytes.below(2) == 1) std::reverse(shape.points.begin(), shape.points.end());
  return shape;
}

}  // namespace slabtide::test
