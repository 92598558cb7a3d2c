#include "parts.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include <fmt/format.h>

#include "core/rounded.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/windows/saw_plan.h"

namespace slabtide {

namespace {

constexpr std::size_t max_parts = 4;
/// A stretch smaller than this fraction of the zone is not reported separately (ours).
constexpr double min_fraction = 0.10;
/// When this much of the differences is explained, no further stretch is split off (ours).
constexpr double told_enough = 0.85;
/// A wall further from the zone than this is not used to describe it (ours).
constexpr double landmark_within_m = 3.0;
/// A division by a wall must be better than one by plain sides by this factor of the unexplained
/// rest (ours).
constexpr double plain_sides_slack = 1.05;

/// Cells whose positions along a line differ by less are side by side.
constexpr double min_bin_m = 1e-3;

/// A cutting that leaves less than another by no more than this share of all the scatter is no
/// better: the last bits must not decide.
constexpr double hair = 1e-9;

/// One way to order the zone's cells along a line.
struct Line {
  enum class Kind { along_walk, west_to_east, south_to_north, from_wall } kind;
  std::string wall;
  std::string id;
  std::vector<double> place_m;  ///< one entry per cell

  bool follows_compass() const {
    return kind == Kind::west_to_east || kind == Kind::south_to_north;
  }
};

/// Sums over the cells in one bin of a line, for weighted least squares.
struct Bin {
  double weight = 0.0;
  double sum = 0.0;
  double square = 0.0;
  double first_m = 0.0;
  double last_m = 0.0;
  std::vector<std::size_t> cells;
};

double distance_to_segment(Point p, Point a, Point b) {
  const double dx = b.x_m - a.x_m;
  const double dy = b.y_m - a.y_m;
  const double length2 = dx * dx + dy * dy;
  const double way = length2 > 0.0 ? ((p.x_m - a.x_m) * dx + (p.y_m - a.y_m) * dy) / length2 : 0.0;
  const double t = std::clamp(way, 0.0, 1.0);
  return std::hypot(p.x_m - a.x_m - t * dx, p.y_m - a.y_m - t * dy);
}

Line line_by(Line::Kind kind, const char* id, const ZoneRun& run, double (*place)(const Cell&)) {
  Line line{kind, {}, id, {}};
  for (const CellRun& cell : run.cells) line.place_m.push_back(place(cell.cell));
  return line;
}

/// The zone's first side runs rather north or south. Of those halfway, every other does on the way
/// round, so that a drawing turned by 90 degrees turns the answer too.
bool starts_northward(const Zone& zone) {
  const double east_m = zone.outline[1].x_m - zone.outline[0].x_m;
  const double north_m = zone.outline[1].y_m - zone.outline[0].y_m;
  constexpr double hair_m = 1e-5;
  const double rather_m = std::abs(north_m) - std::abs(east_m);
  return std::abs(rather_m) > hair_m ? rather_m > 0.0 : north_m * east_m > 0.0;
}

/// Of two that tell as much the first is taken: the one along the zone's first side, whichever way
/// the drawing lies.
std::vector<Line> lines_of(const Job& job, const Zone& zone, const ZoneRun& run) {
  if (zone.path) {
    return {line_by(Line::Kind::along_walk, "along", run,
                    [](const Cell& cell) { return cell.along_m; })};
  }
  std::vector<Line> lines{line_by(Line::Kind::west_to_east, "west", run,
                                  [](const Cell& cell) { return cell.centre.x_m; }),
                          line_by(Line::Kind::south_to_north, "south", run,
                                  [](const Cell& cell) { return cell.centre.y_m; })};
  if (starts_northward(zone)) std::swap(lines[0], lines[1]);
  for (std::size_t i = 0; i < job.obstacles.size(); ++i) {
    const Obstacle& obstacle = job.obstacles[i];
    if (obstacle.kind != ObstacleKind::wall) continue;
    Line line{Line::Kind::from_wall,
              obstacle.name.empty() ? "wall" : obstacle.name,
              fmt::format("wall{}", i + 1),
              {}};
    for (const CellRun& cell : run.cells) {
      line.place_m.push_back(distance_to_segment(cell.cell.centre, obstacle.from, obstacle.to));
    }
    const double near_m = *std::min_element(line.place_m.begin(), line.place_m.end());
    if (near_m < landmark_within_m) lines.push_back(std::move(line));
  }
  return lines;
}

/// How a figure of the cells grows along the line: -1 to 1, by area. Cells without one count for
/// nothing.
template <class FigureOf>
double growth_along(const Line& line, const ZoneRun& run, FigureOf figure_of) {
  double weight = 0.0;
  double mean_m = 0.0;
  double mean = 0.0;
  double together = 0.0;
  double square_m = 0.0;
  double square = 0.0;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    const std::optional<double> figure = figure_of(i);
    if (!figure || run.cells[i].cell.border) continue;
    const double area = run.cells[i].cell.area_m2;
    weight += area;
    const double off_m = line.place_m[i] - mean_m;
    const double off = *figure - mean;
    mean_m += off_m * area / weight;
    mean += off * area / weight;
    together += area * off_m * (*figure - mean);
    square_m += area * off_m * (line.place_m[i] - mean_m);
    square += area * off * (*figure - mean);
  }
  return square_m * square > 0.0 ? together / std::sqrt(square_m * square) : 0.0;
}

/// A line by the compass runs from what is ready first, or where both ends are alike from what is
/// placed first: of cuttings that are as good the first along it is taken, and a drawing that lies
/// another way has its west elsewhere.
bool runs_backward(const Line& line, const ZoneRun& run,
                   const std::vector<std::optional<double>>& ready_s) {
  if (!line.follows_compass()) return false;
  constexpr double even = 1e-6;
  const double later = growth_along(line, run, [&](std::size_t i) { return ready_s[i]; });
  if (std::abs(later) > even) return later < 0.0;
  return growth_along(line, run, [&](std::size_t i) {
           return std::optional(run.cells[i].cell.placed_fraction);
         }) < -even;
}

/// Bins of about half a cell, with their middles spaced evenly from the first cell to the last. The
/// cells of a grid are then in the middle of their bins in either direction along the line; if the
/// line is oblique to the grid, a bin with cells from both sides does not become a stretch of its
/// own.
std::vector<Bin> bins_of(const Line& line, const ZoneRun& run,
                         const std::vector<std::optional<double>>& ready_s) {
  const auto [low, high] = std::minmax_element(line.place_m.begin(), line.place_m.end());
  const double steps = std::max(1.0, std::round((*high - *low) / (0.5 * run.cell_m)));
  const double step_m = std::max(min_bin_m, (*high - *low) / steps);
  const bool backward = runs_backward(line, run, ready_s);
  constexpr double rounding = 0.5 + 1e-6;  // what falls between two goes to the later one, always
  std::map<long, Bin> bins;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (!ready_s[i] || run.cells[i].cell.border) continue;
    const double on_m = backward ? *high - line.place_m[i] : line.place_m[i] - *low;
    Bin& bin = bins[static_cast<long>(std::floor(on_m / step_m + rounding))];
    const double area = run.cells[i].cell.area_m2;
    const double place = line.place_m[i];
    bin.first_m = bin.cells.empty() ? place : std::min(bin.first_m, place);
    bin.last_m = bin.cells.empty() ? place : std::max(bin.last_m, place);
    bin.weight += area;
    bin.sum += area * *ready_s[i];
    bin.square += area * *ready_s[i] * *ready_s[i];
    bin.cells.push_back(i);
  }
  std::vector<Bin> ordered;
  for (auto& [place, bin] : bins) ordered.push_back(std::move(bin));
  return ordered;
}

Bin joined(const std::vector<Bin>& bins, std::size_t from, std::size_t to) {
  Bin all = bins[from];
  for (std::size_t i = from + 1; i < to; ++i) {
    all.weight += bins[i].weight;
    all.sum += bins[i].sum;
    all.square += bins[i].square;
    all.last_m = std::max(all.last_m, bins[i].last_m);
    all.first_m = std::min(all.first_m, bins[i].first_m);
    all.cells.insert(all.cells.end(), bins[i].cells.begin(), bins[i].cells.end());
  }
  return all;
}

double scatter(const Bin& bin) {
  return std::max(0.0, bin.square - bin.sum * bin.sum / bin.weight);
}

/// Contiguous stretches of the bins and the scatter within them.
struct Cutting {
  std::vector<Bin> stretches;
  double left = std::numeric_limits<double>::infinity();
  double whole = 0.0;  ///< the scatter uncut
};

/// Sums over the first k bins, so that the scatter of any stretch takes three subtractions.
class RunningSums {
 public:
  explicit RunningSums(const std::vector<Bin>& bins) : sums_(bins.size() + 1) {
    for (std::size_t i = 0; i < bins.size(); ++i) {
      sums_[i + 1] = sums_[i];
      sums_[i + 1].weight += bins[i].weight;
      sums_[i + 1].sum += bins[i].sum;
      sums_[i + 1].square += bins[i].square;
    }
  }

  std::size_t size() const { return sums_.size() - 1; }
  double weight() const { return sums_.back().weight; }

  /// The scatter within the stretch [from, to); infinite if its weight is below the minimum.
  double scatter_of(std::size_t from, std::size_t to, double min_weight) const {
    Bin stretch;
    stretch.weight = sums_[to].weight - sums_[from].weight;
    stretch.sum = sums_[to].sum - sums_[from].sum;
    stretch.square = sums_[to].square - sums_[from].square;
    if (!(stretch.weight >= min_weight)) return std::numeric_limits<double>::infinity();
    return scatter(stretch);
  }

 private:
  std::vector<Bin> sums_;
};

/// The ends of the `count` contiguous stretches with the least scatter (dynamic programming); empty
/// if every division has a stretch below the minimum weight.
std::vector<std::size_t> best_ends(const RunningSums& sums, std::size_t count) {
  const double min_weight = min_fraction * sums.weight();
  const std::size_t n = sums.size();
  const double none = std::numeric_limits<double>::infinity();
  const double better_by = hair * sums.scatter_of(0, n, 0.0);
  std::vector<double> left(n + 1, none);
  for (std::size_t to = 1; to <= n; ++to) left[to] = sums.scatter_of(0, to, min_weight);
  std::vector<std::vector<std::size_t>> cut(count + 1, std::vector<std::size_t>(n + 1, 0));
  for (std::size_t k = 2; k <= count; ++k) {
    std::vector<double> next(n + 1, none);
    for (std::size_t to = k; to <= n; ++to) {
      for (std::size_t from = k - 1; from < to; ++from) {
        const double total = left[from] + sums.scatter_of(from, to, min_weight);
        if (total < next[to] - better_by) {
          next[to] = total;
          cut[k][to] = from;
        }
      }
    }
    left = std::move(next);
  }
  if (!std::isfinite(left[n])) return {};
  std::vector<std::size_t> ends{n};
  for (std::size_t k = count; k >= 2; --k) ends.insert(ends.begin(), cut[k][ends.front()]);
  return ends;
}

Cutting cutting_at(const std::vector<Bin>& bins, const std::vector<std::size_t>& ends) {
  Cutting cutting;
  cutting.left = 0.0;
  std::size_t from = 0;
  for (const std::size_t to : ends) {
    cutting.stretches.push_back(joined(bins, from, to));
    cutting.left += scatter(cutting.stretches.back());
    from = to;
  }
  return cutting;
}

double mean_s(const Bin& bin) { return bin.sum / bin.weight; }

/// Merges neighbours whose means differ by less than `differs_s`, the closest pair first.
void join_alike(std::vector<Bin>& stretches, double differs_s) {
  while (stretches.size() > 1) {
    std::size_t closest = 0;
    double apart_s = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i + 1 < stretches.size(); ++i) {
      const double gap = std::abs(mean_s(stretches[i + 1]) - mean_s(stretches[i]));
      if (rounded(gap) < rounded(apart_s)) {
        apart_s = gap;
        closest = i;
      }
    }
    if (rounded(apart_s) >= rounded(differs_s)) return;
    stretches[closest] = joined(stretches, closest, closest + 2);
    stretches.erase(stretches.begin() + static_cast<std::ptrdiff_t>(closest) + 1);
  }
}

Cutting cut_line(const std::vector<Bin>& bins, double differs_s) {
  const RunningSums sums(bins);
  const double whole = sums.scatter_of(0, bins.size(), 0.0);
  Cutting best;
  for (std::size_t count = 2; count <= std::min(max_parts, bins.size()); ++count) {
    const std::vector<std::size_t> ends = best_ends(sums, count);
    if (ends.empty()) continue;
    Cutting cutting = cutting_at(bins, ends);
    if (cutting.left < best.left - hair * whole) best = std::move(cutting);
    if (best.left <= (1.0 - told_enough + hair) * whole) break;
  }
  join_alike(best.stretches, differs_s);
  best.left = 0.0;
  best.whole = whole;
  for (const Bin& stretch : best.stretches) best.left += scatter(stretch);
  std::sort(best.stretches.begin(), best.stretches.end(),
            [](const Bin& a, const Bin& b) { return a.first_m < b.first_m; });
  return best;
}

std::string walk_name(std::size_t i, const std::vector<Bin>& stretches, double end_m,
                      UnitSystem units) {
  const auto border = [&](std::size_t k) {
    return 0.5 * (stretches[k].last_m + stretches[k + 1].first_m);
  };
  if (i == 0) return fmt::format("near {}", length_words(border(0), units));
  if (i + 1 == stretches.size())
    return fmt::format("far {}", length_words(end_m - border(i - 1), units));
  const double from_m = border(i - 1);
  return units == UnitSystem::us
             ? fmt::format("{:.0f} to {}", ft_from_m(from_m), length_words(border(i), units))
             : fmt::format("{:.1f} to {}", from_m, length_words(border(i), units));
}

std::string middle_name(std::size_t i, std::size_t count, std::string_view low,
                        std::string_view high) {
  if (count == 3) return "middle";
  return fmt::format("middle, {}", i == 1 ? low : high);
}

std::string side_name(std::size_t i, std::size_t count, std::string_view low,
                      std::string_view high) {
  if (i == 0) return fmt::format("{} side", low);
  if (i + 1 == count) return fmt::format("{} side", high);
  return middle_name(i, count, low, high);
}

std::string part_name(const Line& line, std::size_t i, const std::vector<Bin>& stretches,
                      double end_m, UnitSystem units) {
  const std::size_t count = stretches.size();
  switch (line.kind) {
    case Line::Kind::along_walk:
      return walk_name(i, stretches, end_m, units);
    case Line::Kind::west_to_east:
      return side_name(i, count, "west", "east");
    case Line::Kind::south_to_north:
      return side_name(i, count, "south", "north");
    case Line::Kind::from_wall:
      break;
  }
  if (i == 0) return fmt::format("by the {}", line.wall);
  if (i + 1 == count) return fmt::format("away from the {}", line.wall);
  return middle_name(i, count, "nearer the wall", "farther out");
}

double spread_s(const ZoneRun& run, const std::vector<std::optional<double>>& ready_s) {
  constexpr double tenth = 0.10;
  std::vector<TimedArea> areas;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    if (ready_s[i] && !run.cells[i].cell.border) {
      areas.push_back({ready_s[i], run.cells[i].cell.area_m2});
    }
  }
  const auto first = time_of_fraction(areas, tenth);
  const auto last = time_of_fraction(areas, 1.0 - tenth);
  return first && last ? *last - *first : 0.0;
}

}  // namespace

std::vector<ZonePart> split_into_parts(const Job& job, const Zone& zone, const ZoneRun& run,
                                       const std::vector<std::optional<double>>& ready_s,
                                       double differs_s) {
  if (rounded(spread_s(run, ready_s)) < rounded(differs_s)) return {};
  Cutting best;
  Line best_line{};
  for (Line& line : lines_of(job, zone, run)) {
    const std::vector<Bin> bins = bins_of(line, run, ready_s);
    if (bins.size() < 2) continue;
    Cutting cutting = cut_line(bins, differs_s);
    const double slack = line.kind == Line::Kind::from_wall ? plain_sides_slack : 1.0;
    if (cutting.stretches.size() > 1 && cutting.left * slack < best.left - hair * cutting.whole) {
      best = std::move(cutting);
      best_line = std::move(line);
    }
  }
  if (best.stretches.empty()) return {};
  const double length_m = uncut_length_m(zone);
  std::vector<std::pair<double, ZonePart>> timed;
  for (std::size_t i = 0; i < best.stretches.size(); ++i) {
    timed.emplace_back(
        mean_s(best.stretches[i]),
        ZonePart{fmt::format("{}-{}-of-{}", best_line.id, i + 1, best.stretches.size()),
                 part_name(best_line, i, best.stretches, length_m, job.units),
                 best.stretches[i].cells});
  }
  std::stable_sort(timed.begin(), timed.end(), [](const auto& a, const auto& b) {
    return rounded(a.first) < rounded(b.first);
  });
  std::vector<ZonePart> parts;
  for (auto& [when, part] : timed) parts.push_back(std::move(part));
  return parts;
}

}  // namespace slabtide
