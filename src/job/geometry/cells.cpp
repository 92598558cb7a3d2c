#include "slabtide/job/geometry/cells.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <numbers>
#include <stdexcept>

#include "clipping.h"
#include "zone_geometry.h"

namespace slabtide {

namespace {

using clipping::HalfPlane;
using clipping::Moments;

/// Pieces smaller than this fraction of a full cell join their neighbour.
constexpr double sliver_fraction = 0.3;
/// Areas below this are rounding, not concrete.
constexpr double nothing_m2 = 1e-9;
/// Cells whose distances along differ by less than this are placed together.
constexpr double same_distance_m = 1e-6;

/// Axes of the grid: x in the direction of placing, y to its left.
struct Axes {
  double cosine = 1.0;  ///< of the angle from east, counter-clockwise
  double sine = 0.0;

  Point to_grid(Point p) const {
    return {cosine * p.x_m + sine * p.y_m, -sine * p.x_m + cosine * p.y_m};
  }
  Point to_plan(Point p) const {
    return {cosine * p.x_m - sine * p.y_m, sine * p.x_m + cosine * p.y_m};
  }
};

/// The extent of a shape along the axes.
struct Extent {
  Point low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Point high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};

  double length_m() const { return high.x_m - low.x_m; }
  double width_m() const { return high.y_m - low.y_m; }
};

/// The area to be cut: rings, minus other rings that lie inside them.
struct Region {
  std::vector<Outline> rings;
  std::vector<Outline> less;
};

struct Piece {
  Point centre;
  double area_m2 = 0.0;
};

/// Quarter turns are exact, so that a drawing turned by 90 degrees is cut the same way.
Axes axes_toward(double compass_deg) {
  constexpr double quarter_deg = 90.0;
  const double quarters = std::round(compass_deg / quarter_deg);
  const double rest_rad = (compass_deg - quarters * quarter_deg) * std::numbers::pi / 180.0;
  Axes axes{std::sin(rest_rad), std::cos(rest_rad)};
  const long turns = std::lround(quarters);
  for (long i = 0; i < (turns % 4 + 4) % 4; ++i) axes = {axes.sine, -axes.cosine};
  return axes;
}

Outline to_grid(const Outline& outline, const Axes& axes) {
  Outline turned;
  for (const auto& point : outline) turned.push_back(axes.to_grid(point));
  return turned;
}

void include(Extent& extent, const Outline& outline) {
  for (const auto& point : outline) {
    extent.low = {std::min(extent.low.x_m, point.x_m), std::min(extent.low.y_m, point.y_m)};
    extent.high = {std::max(extent.high.x_m, point.x_m), std::max(extent.high.y_m, point.y_m)};
  }
}

Extent extent_of(const std::vector<Outline>& outlines) {
  Extent extent;
  for (const auto& outline : outlines) include(extent, outline);
  return extent;
}

/// Axes of the smallest box around the outline that has one side along a side of the outline; x
/// runs along the box's longer side.
Axes along_longer_side(const Outline& outline) {
  Axes best;
  double best_m2 = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point from = outline[i];
    const Point to = outline[(i + 1) % outline.size()];
    const double length_m = std::hypot(to.x_m - from.x_m, to.y_m - from.y_m);
    const Axes axes{(to.x_m - from.x_m) / length_m, (to.y_m - from.y_m) / length_m};
    const auto extent = extent_of({to_grid(outline, axes)});
    const double box_m2 = extent.length_m() * extent.width_m();
    constexpr double hair = 1e-6;  // rounding must not decide between two equal sides
    if (box_m2 > best_m2 * (1.0 - hair)) continue;
    best_m2 = box_m2;
    best =
        extent.length_m() >= extent.width_m() * (1.0 - hair) ? axes : Axes{-axes.sine, axes.cosine};
  }
  return best;
}

/// The same axes, turned if necessary so that the outline's first point lies in the nearer half.
Axes from_first_point(const Outline& outline, const Axes& axes) {
  const auto extent = extent_of({to_grid(outline, axes)});
  const double middle_m = (extent.low.x_m + extent.high.x_m) / 2.0;
  if (axes.to_grid(outline.front()).x_m <= middle_m + same_distance_m) return axes;
  return {-axes.cosine, -axes.sine};
}

Axes placing_axes(const Zone& zone) {
  if (zone.placed_toward_deg && !zone.path) return axes_toward(*zone.placed_toward_deg);
  return from_first_point(zone.outline, along_longer_side(zone.outline));
}

/// Evenly spaced lines from `low` to `high`, about `size_m` apart. The outer two lie beyond the
/// shape, so that rounding cuts nothing off.
std::vector<double> grid_lines(double low, double high, double size_m) {
  constexpr double beyond_m = 1.0;
  const long steps = std::max(1L, std::lround((high - low) / size_m));
  std::vector<double> lines{low - beyond_m};
  for (long i = 1; i < steps; ++i) {
    lines.push_back(low + (high - low) * static_cast<double>(i) / static_cast<double>(steps));
  }
  lines.push_back(high + beyond_m);
  return lines;
}

/// The parts of the rings that lie in both half-planes.
std::vector<Outline> within(const std::vector<Outline>& rings, const HalfPlane& one,
                            const HalfPlane& other) {
  std::vector<Outline> kept;
  for (const auto& ring : rings) {
    auto part = clipping::clipped(clipping::clipped(ring, one), other);
    if (!part.empty()) kept.push_back(std::move(part));
  }
  return kept;
}

Region within(const Region& region, const HalfPlane& one, const HalfPlane& other) {
  return {within(region.rings, one, other), within(region.less, one, other)};
}

void add_piece(const Region& region, Point near, std::vector<Piece>& pieces) {
  Moments sum;
  for (const auto& ring : region.rings) sum += clipping::moments_of(ring, near);
  for (const auto& ring : region.less) sum -= clipping::moments_of(ring, near);
  if (!(sum.area_m2 > nothing_m2)) return;
  const Point centre{near.x_m + sum.x_m3 / sum.area_m2, near.y_m + sum.y_m3 / sum.area_m2};
  pieces.push_back({centre, sum.area_m2});
}

/// Cuts the region by an even grid over its own extent: first into strips, then each strip into
/// cells. If the region's shape splits a cell, its parts count as one piece around their common
/// centre.
std::vector<Piece> cut_by_grid(const Region& region, double size_m) {
  const auto extent = extent_of(region.rings);
  const auto columns = grid_lines(extent.low.x_m, extent.high.x_m, size_m);
  const auto rows = grid_lines(extent.low.y_m, extent.high.y_m, size_m);
  std::vector<Piece> pieces;
  for (std::size_t i = 1; i < columns.size(); ++i) {
    const Region strip = within(region, {1, 0, columns[i - 1]}, {-1, 0, -columns[i]});
    for (std::size_t j = 1; j < rows.size(); ++j) {
      const Region part = within(strip, {0, 1, rows[j - 1]}, {0, -1, -rows[j]});
      add_piece(part, {columns[i], rows[j]}, pieces);
    }
  }
  return pieces;
}

void join(Piece& into, const Piece& sliver) {
  into.area_m2 += sliver.area_m2;
  const double fraction = sliver.area_m2 / into.area_m2;
  into.centre.x_m += (sliver.centre.x_m - into.centre.x_m) * fraction;
  into.centre.y_m += (sliver.centre.y_m - into.centre.y_m) * fraction;
}

std::size_t nearest_to(Point point, const std::vector<Piece>& pieces) {
  // Ties go to the first piece in grid order, which turns with the drawing.
  std::size_t nearest = 0;
  double nearest_m = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const Point centre = pieces[i].centre;
    // Most lie further off by one coordinate alone.
    if (std::abs(centre.x_m - point.x_m) > nearest_m) continue;
    const double away_m = std::hypot(centre.x_m - point.x_m, centre.y_m - point.y_m);
    if (!(away_m < nearest_m - same_distance_m)) continue;
    nearest = i;
    nearest_m = away_m;
  }
  return nearest;
}

/// Joins each sliver to the nearest full piece; if all pieces are slivers they stay.
std::vector<Piece> without_slivers(std::vector<Piece> pieces, double full_m2) {
  const auto slivers = std::stable_partition(pieces.begin(), pieces.end(), [&](const Piece& piece) {
    constexpr double hair = 1e-6;  // rounding must not decide
    return piece.area_m2 >= sliver_fraction * full_m2 * (1.0 - hair);
  });
  // Distances use the centres before any joining, so that the order does not matter.
  const std::vector<Piece> whole(pieces.begin(), slivers);
  if (whole.empty()) return pieces;
  for (auto sliver = slivers; sliver != pieces.end(); ++sliver) {
    join(pieces[nearest_to(sliver->centre, whole)], *sliver);
  }
  pieces.erase(slivers, pieces.end());
  return pieces;
}

void add_cells(const Region& region, double size_m, double full_m2, bool border, const Axes& axes,
               std::vector<Cell>& cells) {
  for (const auto& piece : without_slivers(cut_by_grid(region, size_m), full_m2)) {
    Cell cell;
    cell.centre = axes.to_plan(piece.centre);
    cell.area_m2 = piece.area_m2;
    cell.border = border;
    cells.push_back(cell);
  }
}

/// Whether a walkway is placed from its last point to its first.
bool walkway_runs_backward(const Zone& zone) {
  if (!zone.placed_toward_deg) return false;
  const Axes axes = axes_toward(*zone.placed_toward_deg);
  return axes.to_grid(zone.path->line.back()).x_m < axes.to_grid(zone.path->line.front()).x_m;
}

void set_distances_on_walkway(const Zone& zone, std::vector<Cell>& cells) {
  const bool backward = walkway_runs_backward(zone);
  const double length_m = line_length_m(*zone.path);
  for (auto& cell : cells) {
    const double along_m = distance_along_m(*zone.path, cell.centre);
    cell.along_m = backward ? length_m - along_m : along_m;
  }
}

void set_distances(const Zone& zone, const Axes& axes, std::vector<Cell>& cells) {
  if (zone.path) {
    set_distances_on_walkway(zone, cells);
    return;
  }
  const double start_m = extent_of({to_grid(zone.outline, axes)}).low.x_m;
  for (auto& cell : cells) cell.along_m = axes.to_grid(cell.centre).x_m - start_m;
}

/// Cells equally far along are placed together and get the middle of their combined span.
void set_placed_fractions(std::vector<Cell>& cells) {
  std::stable_sort(cells.begin(), cells.end(),
                   [](const Cell& a, const Cell& b) { return a.along_m < b.along_m; });
  double total_m2 = 0.0;
  for (const auto& cell : cells) total_m2 += cell.area_m2;
  double before_m2 = 0.0;
  for (auto first = cells.begin(); first != cells.end();) {
    const auto last = std::find_if(first, cells.end(), [&](const Cell& cell) {
      return cell.along_m - first->along_m > same_distance_m;
    });
    double together_m2 = 0.0;
    for (auto cell = first; cell != last; ++cell) together_m2 += cell->area_m2;
    const double fraction = (before_m2 + together_m2 / 2.0) / total_m2;
    for (; first != last; ++first) first->placed_fraction = std::clamp(fraction, 0.0, 1.0);
    before_m2 += together_m2;
  }
}

void check(const Zone& zone) {
  if (const auto fault = outline_fault(zone.outline)) {
    throw std::invalid_argument("the zone's outline cannot be used: " + *fault);
  }
  const auto extent = extent_of({zone.outline});
  if (!(std::max(extent.length_m(), extent.width_m()) <= longest_zone_m)) {
    throw std::invalid_argument("the zone reaches too far to be cut into cells");
  }
  if (zone.placed_toward_deg && !std::isfinite(*zone.placed_toward_deg)) {
    throw std::invalid_argument("the direction of placing is no number");
  }
}

}  // namespace

double cell_size_for(const Job& job, double most_cells) {
  if (job.obstacles.empty()) return cell_size_m;
  double sum_m2 = 0.0;
  double border_m = 0.0;  // strips are cut along their length, and no wider than they are
  for (const Zone& zone : job.zones) {
    sum_m2 += area_m2(zone.outline);
    if (zone.border) border_m += perimeter_m(zone.outline);
  }
  // sum / size^2 + border / size = most
  const double size_m =
      (border_m + std::sqrt(border_m * border_m + 4.0 * most_cells * sum_m2)) / (2.0 * most_cells);
  // In whole millimetres, so that rounding of the corners does not decide.
  return std::max(cell_size_m, std::ceil(1e3 * size_m) / 1e3);
}

std::vector<Cell> cut_into_cells(const Zone& zone, double size_m) {
  check(zone);
  if (!(size_m > 0.0)) throw std::invalid_argument("a cell's size must be positive");
  const Axes axes = placing_axes(zone);
  const Outline whole = to_grid(counter_clockwise(zone.outline), axes);
  std::vector<Outline> field{whole};
  std::vector<Cell> cells;
  if (zone.border) {
    field = inset(whole, zone.border->width_m);
    const double across_m = std::min(zone.border->width_m, size_m);
    add_cells({{whole}, field}, size_m, across_m * size_m, true, axes, cells);
  }
  add_cells({field, {}}, size_m, size_m * size_m, false, axes, cells);
  set_distances(zone, axes, cells);
  set_placed_fractions(cells);
  return cells;
}

}  // namespace slabtide
