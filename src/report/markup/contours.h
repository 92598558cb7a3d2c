#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/core/geometry.h"

namespace slabtide {

/// Values at the nodes of a square grid, row by row from the south-west; absent where there is
/// none.
struct Lattice {
  Point origin;
  double step_m = 1.0;
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::vector<std::optional<double>> values;

  Point node(std::size_t column, std::size_t row) const {
    return {origin.x_m + static_cast<double>(column) * step_m,
            origin.y_m + static_cast<double>(row) * step_m};
  }
  const std::optional<double>& value(std::size_t column, std::size_t row) const {
    return values[row * columns + column];
  }
};

/// A line of equal value; a ring comes back to its first point.
using ContourLine = std::vector<Point>;

/// From its first point to its last.
double line_length_m(const ContourLine& line);
/// The point halfway along. Error: std::invalid_argument for a line without points.
Point middle_of(const ContourLine& line);

/// Where the lattice passes `level`: marching squares, straight between two nodes, squares with
/// an absent corner left out. A node at the level counts as above it; a saddle is joined by the
/// mean of its corners. Source: common practice.
/// Error: std::invalid_argument where the values are not columns x rows.
std::vector<ContourLine> contour_lines(const Lattice& lattice, double level);

/// Levels between the least and the largest value, an even step apart that is a whole number of
/// `steps` (rising) and gives at most `max` of them; none where the values differ by less than
/// the smallest step.
struct Levels {
  double step = 0.0;
  std::vector<double> at;
};
Levels even_levels(double min, double largest, const std::vector<double>& steps, std::size_t max);

}  // namespace slabtide
