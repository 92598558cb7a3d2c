#include "cell_field.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "job/geometry/zone_geometry.h"
#include "slabtide/job/geometry/cells.h"

namespace slabtide {

namespace {

constexpr double bell_cells = 0.9;   ///< standard deviation of the bell curve (ours)
constexpr double reach_bells = 3.0;  ///< beyond it nothing counts
constexpr double min_weight = 1e-3;
/// Regularisation that keeps the plane level across a single row of cells.
constexpr double ridge_fraction = 1e-4;
constexpr double step_cells = 0.5;
constexpr double beyond_edge_steps = 0.75;
/// A large zone gets a coarser lattice with about this many nodes per side.
constexpr double max_nodes = 90.0;

/// Sums for the weighted fit of a plane around the node.
struct Normal {
  double w = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;
};

struct Near {
  std::size_t centre;
  double weight;
  double x_m;
  double y_m;
};

std::vector<Near> centres_near(Point node, const std::vector<Point>& centres, double bell_m) {
  const double reach_m = reach_bells * bell_m;
  std::vector<Near> near;
  for (std::size_t i = 0; i < centres.size(); ++i) {
    const double x_m = centres[i].x_m - node.x_m;
    const double y_m = centres[i].y_m - node.y_m;
    const double away2 = x_m * x_m + y_m * y_m;
    if (away2 > reach_m * reach_m) continue;
    near.push_back({i, std::exp(-0.5 * away2 / (bell_m * bell_m)), x_m, y_m});
  }
  return near;
}

Normal normal_of(const std::vector<Near>& near, double bell_m) {
  Normal sum;
  for (const Near& one : near) {
    sum.w += one.weight;
    sum.x += one.weight * one.x_m;
    sum.y += one.weight * one.y_m;
    sum.xx += one.weight * one.x_m * one.x_m;
    sum.xy += one.weight * one.x_m * one.y_m;
    sum.yy += one.weight * one.y_m * one.y_m;
  }
  const double ridge = ridge_fraction * sum.w * bell_m * bell_m;
  sum.xx += ridge;
  sum.yy += ridge;
  return sum;
}

struct Box {
  Point low;
  Point high;
};

Box box_of(const Outline& outline) {
  Box box{outline.front(), outline.front()};
  for (const Point& p : outline) {
    box.low = {std::min(box.low.x_m, p.x_m), std::min(box.low.y_m, p.y_m)};
    box.high = {std::max(box.high.x_m, p.x_m), std::max(box.high.y_m, p.y_m)};
  }
  return box;
}

Lattice lattice_over(const Outline& within, double cell_m) {
  const Box box = box_of(within);
  const double longest_m = std::max(box.high.x_m - box.low.x_m, box.high.y_m - box.low.y_m);
  const double step_m = std::max(step_cells * cell_m, longest_m / max_nodes);
  const auto nodes = [&](double low, double high) {
    return static_cast<std::size_t>(std::ceil((high - low) / step_m)) + 3;
  };
  return {{box.low.x_m - step_m, box.low.y_m - step_m},
          step_m,
          nodes(box.low.x_m, box.high.x_m),
          nodes(box.low.y_m, box.high.y_m),
          {}};
}

}  // namespace

CellField::CellField(const std::vector<Point>& centres, const Outline& within, double cell_m)
    : centre_count_(centres.size()), empty_(lattice_over(within, cell_m)) {
  if (centres.empty()) throw std::invalid_argument("CellField: no cells");
  const double margin_m = beyond_edge_steps * empty_.step_m * std::sqrt(2.0);
  for (std::size_t row = 0; row < empty_.rows; ++row) {
    for (std::size_t column = 0; column < empty_.columns; ++column) {
      const Point node = empty_.node(column, row);
      const bool near = outside_by_m(within, node) <= margin_m;
      fractions_.push_back(near ? fractions_at(node, centres, bell_cells * cell_m)
                                : std::vector<Share>{});
    }
  }
}

std::vector<CellField::Share> CellField::fractions_at(Point node, const std::vector<Point>& centres,
                                                      double bell_m) {
  const std::vector<Near> near = centres_near(node, centres, bell_m);
  const Normal s = normal_of(near, bell_m);
  // The plane's height at the node: the first row of the inverse of the normal matrix.
  const double minor = s.xx * s.yy - s.xy * s.xy;
  const double minor_x = s.xy * s.y - s.x * s.yy;
  const double minor_y = s.x * s.xy - s.xx * s.y;
  const double determinant = s.w * minor + s.x * minor_x + s.y * minor_y;
  std::vector<Share> fractions;
  if (!(determinant > 0.0)) return fractions;
  for (const Near& one : near) {
    const double weight =
        one.weight * (minor + minor_x * one.x_m + minor_y * one.y_m) / determinant;
    fractions.push_back({one.centre, weight});
  }
  return fractions;
}

Lattice CellField::lattice(const std::vector<std::optional<double>>& values) const {
  if (values.size() != centre_count_) {
    throw std::invalid_argument("CellField: not a value for each cell");
  }
  Lattice lattice = empty_;
  for (const auto& fractions : fractions_) {
    std::optional<double> sum;
    if (!fractions.empty()) sum = 0.0;
    for (const Share& fraction : fractions) {
      if (!sum) break;
      if (values[fraction.centre]) {
        *sum += fraction.weight * *values[fraction.centre];
      } else if (std::abs(fraction.weight) > min_weight) {
        sum.reset();
      }
    }
    lattice.values.push_back(sum);
  }
  return lattice;
}

}  // namespace slabtide
