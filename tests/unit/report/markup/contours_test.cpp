#include "report/markup/contours.h"

#include <cmath>
#include <functional>
#include <numbers>
#include <stdexcept>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

Lattice lattice_of(std::size_t columns, std::size_t rows, double step_m,
                   const std::function<std::optional<double>(Point)>& value) {
  Lattice lattice{{-1.0, -1.0}, step_m, columns, rows, {}};
  for (std::size_t row = 0; row < rows; ++row) {
    for (std::size_t column = 0; column < columns; ++column) {
      lattice.values.push_back(value(lattice.node(column, row)));
    }
  }
  return lattice;
}

TEST_CASE("a slope has one straight line at each level, exactly where the level is") {
  const Lattice slope = lattice_of(9, 5, 0.25, [](Point p) { return 3.0 * p.x_m + p.y_m; });
  const auto lines = contour_lines(slope, 0.4);
  REQUIRE(lines.size() == 1);
  for (const Point& p : lines[0]) CHECK(3.0 * p.x_m + p.y_m == doctest::Approx(0.4).epsilon(1e-12));
  // From y -1 to 0 the line 3x + y = 0.4 is hypot(1, 1/3) long.
  CHECK(line_length_m(lines[0]) == doctest::Approx(std::hypot(1.0, 1.0 / 3.0)).epsilon(1e-12));
  const Point middle = middle_of(lines[0]);
  CHECK(middle.y_m == doctest::Approx(-0.5).epsilon(1e-12));
  CHECK(contour_lines(slope, 40.0).empty());
}

TEST_CASE("a cone has a ring about its top") {
  const Lattice cone = lattice_of(41, 41, 0.05, [](Point p) { return std::hypot(p.x_m, p.y_m); });
  const auto lines = contour_lines(cone, 0.6);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].front() == lines[0].back());
  for (const Point& p : lines[0]) {
    // Linear between nodes 0.05 m apart: 0.00035 m off the circle was observed.
    CHECK(std::abs(std::hypot(p.x_m, p.y_m) - 0.6) < 0.0005);
  }
  // The length of the circle; 0.04 % less was observed.
  CHECK(line_length_m(lines[0]) == doctest::Approx(1.2 * std::numbers::pi).epsilon(0.0006));
}

TEST_CASE("a level on the nodes themselves gives a line that is one") {
  const Lattice slope = lattice_of(5, 3, 0.5, [](Point p) { return p.x_m; });
  const auto lines = contour_lines(slope, 0.0);
  REQUIRE(lines.size() == 1);
  CHECK(lines[0].size() == 3);
  for (const Point& p : lines[0]) CHECK(p.x_m == 0.0);
  CHECK(contour_lines(lattice_of(5, 3, 0.5, [](Point) { return 1.0; }), 1.0).empty());
}

TEST_CASE("a saddle is joined by its mean") {
  Lattice saddle{{0, 0}, 1.0, 2, 2, {4.0, 0.0, 0.0, 4.0}};
  // The mean, 2, is above 1: the high corners are connected, and the lines go around the low ones.
  const auto under = contour_lines(saddle, 1.0);
  REQUIRE(under.size() == 2);
  for (const auto& line : under) {
    const Point middle = middle_of(line);
    CHECK((middle.x_m - 0.5) * (middle.y_m - 0.5) < 0.0);
  }
  // It is below 3: the lines go around the high corners.
  const auto over = contour_lines(saddle, 3.0);
  REQUIRE(over.size() == 2);
  for (const auto& line : over) {
    const Point middle = middle_of(line);
    CHECK((middle.x_m - 0.5) * (middle.y_m - 0.5) > 0.0);
  }
}

TEST_CASE("lines stop where values are absent") {
  const Lattice half = lattice_of(
      9, 9, 0.25, [](Point p) { return p.y_m > 0.1 ? std::nullopt : std::optional(p.x_m); });
  const auto lines = contour_lines(half, 0.1);
  REQUIRE(lines.size() == 1);
  CHECK(line_length_m(lines[0]) == doctest::Approx(1.0));
  CHECK_THROWS_AS(contour_lines({{0, 0}, 1.0, 2, 2, {1.0}}, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(middle_of({}), std::invalid_argument);
}

TEST_CASE("levels are even, and not too many") {
  const std::vector<double> steps{5, 10, 15, 30, 60};
  CHECK(even_levels(62.0, 81.0, steps, 8).at == std::vector<double>{65, 70, 75, 80});
  CHECK(even_levels(62.0, 181.0, steps, 8).step == 15);
  CHECK(even_levels(62.0, 181.0, steps, 8).at.size() == 8);
  CHECK(even_levels(61.0, 64.0, steps, 8).at.empty());
  CHECK(even_levels(0.0, 6000.0, steps, 8).step == 60);
}

}  // namespace
}  // namespace slabtide
