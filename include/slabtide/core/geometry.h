#pragma once

#include <vector>

namespace slabtide {

/// A point of the flat site plan: x east, y north.
struct Point {
  double x_m = 0.0;
  double y_m = 0.0;

  friend bool operator==(const Point&, const Point&) = default;
};

/// A closed ring without the repeated last point, counter-clockwise once read.
using Outline = std::vector<Point>;

}  // namespace slabtide
