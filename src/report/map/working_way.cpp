#include "working_way.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/rounded.h"

namespace slabtide {

namespace {

/// If a zone's cells are ready within this time of each other, no path is shown (ours).
constexpr double min_spread_s = 300.0;
/// A path shorter than this is not shown (ours).
constexpr double min_way_cells = 2.0;
constexpr std::size_t quarters = 4;
constexpr std::size_t halves = 2;

double between(Point a, Point b) { return std::hypot(b.x_m - a.x_m, b.y_m - a.y_m); }

Point centre_of(const std::vector<std::size_t>& which, const ZoneRun& run) {
  Point sum;
  double area_m2 = 0.0;
  for (const std::size_t i : which) {
    const Cell& cell = run.cells[i].cell;
    sum.x_m += cell.centre.x_m * cell.area_m2;
    sum.y_m += cell.centre.y_m * cell.area_m2;
    area_m2 += cell.area_m2;
  }
  return {sum.x_m / area_m2, sum.y_m / area_m2};
}

/// The centroid of the cells may lie off a bent walkway, so the cell nearest to it is used.
Point stop_at(const std::vector<std::size_t>& which, const ZoneRun& run) {
  const Point centre = centre_of(which, run);
  const auto away = [&](std::size_t i) {
    return rounded(between(run.cells[i].cell.centre, centre));
  };
  const auto nearest = std::min_element(
      which.begin(), which.end(), [&](std::size_t a, std::size_t b) { return away(a) < away(b); });
  return run.cells[*nearest].cell.centre;
}

std::vector<std::size_t> in_order(const std::vector<std::size_t>& which,
                                  const std::vector<MapCell>& cells) {
  std::vector<std::size_t> ready;
  for (const std::size_t i : which) {
    if (cells[i].opens_s) ready.push_back(i);
  }
  std::stable_sort(ready.begin(), ready.end(), [&](std::size_t a, std::size_t b) {
    return rounded(*cells[a].opens_s) < rounded(*cells[b].opens_s);
  });
  return ready;
}

void add_stop(std::vector<Point>& way, Point stop, double cell_m) {
  if (way.empty() || between(way.back(), stop) > cell_m) way.push_back(stop);
}

/// Adds this many stops for cells in the order they become ready.
void add_stops(std::vector<Point>& way, const std::vector<std::size_t>& ready, std::size_t stops,
               const ZoneRun& run) {
  const std::size_t groups = std::min(stops, ready.size());
  for (std::size_t k = 0; k < groups; ++k) {
    const auto first = static_cast<std::ptrdiff_t>(k * ready.size() / groups);
    const auto last = static_cast<std::ptrdiff_t>((k + 1) * ready.size() / groups);
    add_stop(way, stop_at({ready.begin() + first, ready.begin() + last}, run), run.cell_m);
  }
}

/// All cells of the field, or all cells if the work is not done in the field.
std::vector<std::size_t> worked_cells(const ZoneRun& run, const std::vector<MapCell>& cells) {
  std::vector<std::size_t> field;
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (!cells[i].works) continue;
    all.push_back(i);
    if (!run.cells[i].cell.border) field.push_back(i);
  }
  return field.empty() ? all : field;
}

}  // namespace

std::vector<Point> working_way(const Zone& zone, const ZonePlan& plan, const ZoneRun& run,
                               const std::vector<MapCell>& cells) {
  const std::vector<std::size_t> ready = in_order(worked_cells(run, cells), cells);
  if (ready.empty()) return {};
  if (*cells[ready.back()].opens_s - *cells[ready.front()].opens_s < min_spread_s) return {};
  std::vector<Point> way;
  if (plan.parts.empty()) add_stops(way, ready, zone.path ? quarters : halves, run);
  for (const PartPlan& part : plan.parts) add_stops(way, in_order(part.cells, cells), halves, run);
  if (way.size() < 2 || between(way.front(), way.back()) < min_way_cells * run.cell_m) return {};
  return way;
}

}  // namespace slabtide
