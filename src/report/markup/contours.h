#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/core/geometry.h"

namespace slabtide {

/// Values at the nodes of a square grid, row by row from the south-west; some may be absent.
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

/// A line of equal value; a closed line ends at its first point.
using ContourLine = std::vector<Point>;

/// The length from the first point to the last.
double line_length_m(const ContourLine& line);
/// The point halfway along. Error: std::invalid_argument for a line without points.
Point middle_of(const ContourLine& line);

/// The lines where the lattice crosses `level`: marching squares, with linear interpolation between
/// nodes; squares with an absent corner are left out. A node at the level counts as above it; a
/// saddle is resolved by the mean of its corners. Source: common practice.
/// Error: std::invalid_argument if the number of values is not columns x rows.
std::vector<ContourLine> contour_lines(const Lattice& lattice, double level);

/// Evenly spaced levels between the smallest and the largest value: the multiples of the first of
/// `steps` (increasing) that gives at most `max` of them, else of the last. No levels if there is
/// no multiple of the first step in between.
struct Levels {
  double step = 0.0;
  std::vector<double> at;
};
Levels even_levels(double min, double largest, const std::vector<double>& steps, std::size_t max);

}  // namespace slabtide
