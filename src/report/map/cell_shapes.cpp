#include "cell_shapes.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabtide {

namespace {

/// How far a point is beyond the line halfway between the two, on the side of `to`, times a length.
double beyond_middle(Point p, Point from, Point to) {
  const double dx = to.x_m - from.x_m;
  const double dy = to.y_m - from.y_m;
  const double mx = (from.x_m + to.x_m) / 2.0;
  const double my = (from.y_m + to.y_m) / 2.0;
  return (p.x_m - mx) * dx + (p.y_m - my) * dy;
}

/// The part of a convex ring that is nearer to `from` than to `to`.
Outline nearer_part(const Outline& ring, Point from, Point to) {
  Outline kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    const double at_a = beyond_middle(a, from, to);
    const double at_b = beyond_middle(b, from, to);
    if (at_a <= 0.0) kept.push_back(a);
    if ((at_a < 0.0 && at_b > 0.0) || (at_a > 0.0 && at_b < 0.0)) {
      const double fraction = at_a / (at_a - at_b);
      kept.push_back({a.x_m + (b.x_m - a.x_m) * fraction, a.y_m + (b.y_m - a.y_m) * fraction});
    }
  }
  return kept;
}

/// If the middle line goes through a corner, the corner occurs twice, up to rounding.
Outline without_repeats(Outline ring) {
  constexpr double rounding_m = 1e-9;
  const auto same = [](Point a, Point b) {
    return std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) < rounding_m;
  };
  ring.erase(std::unique(ring.begin(), ring.end(), same), ring.end());
  while (ring.size() > 1 && same(ring.front(), ring.back())) ring.pop_back();
  return ring;
}

Outline shape_of(std::size_t which, const ZoneRun& zone) {
  const std::vector<CellRun>& cells = zone.cells;
  const Cell& cell = cells[which].cell;
  // A cell reaches at most this far from its centre. Where outlines narrow, neighbours may be
  // further apart than cells are large.
  const double search_m = 1.5 * zone.cell_m;
  const Point c = cell.centre;
  Outline ring{{c.x_m - search_m, c.y_m - search_m},
               {c.x_m + search_m, c.y_m - search_m},
               {c.x_m + search_m, c.y_m + search_m},
               {c.x_m - search_m, c.y_m + search_m}};
  for (std::size_t i = 0; i < cells.size(); ++i) {
    const Cell& other = cells[i].cell;
    if (i == which || other.border != cell.border || other.centre == c) continue;
    const double away_m = std::hypot(other.centre.x_m - c.x_m, other.centre.y_m - c.y_m);
    if (away_m < 3.0 * search_m) ring = nearer_part(ring, c, other.centre);
  }
  return without_repeats(std::move(ring));
}

}  // namespace

std::vector<Outline> cell_shapes(const ZoneRun& zone) {
  std::vector<Outline> shapes;
  shapes.reserve(zone.cells.size());
  for (std::size_t i = 0; i < zone.cells.size(); ++i) shapes.push_back(shape_of(i, zone));
  return shapes;
}

}  // namespace slabtide
