#include "grid_joints.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <set>
#include <utility>

#include "core/rounded.h"
#include "day/geometry/chords.h"
#include "day/geometry/corners.h"
#include "job/geometry/zone_geometry.h"

namespace slabtide {

namespace {

using plane::Vector;

/// Lines closer together than this are one line.
constexpr double one_line_m = 0.01;
/// How many divisions more than needed are tried in each direction.
constexpr int max_extra_parts = 2;
/// With more corners than this all are treated alike, because three options for each are too many.
constexpr std::size_t max_free_corners = 3;
/// Limit on the parts of a stretch: a very narrow outline would ask for tiny squares.
constexpr int max_parts = 2000;
/// The largest number of sets returned.
constexpr std::size_t max_sets = 150;
/// Nobody saws more in one slab (ours: at two minutes each, two saws for a whole day). Only an
/// outline with corners by the hundred asks for more, to give each its lines; they then get none.
constexpr std::size_t max_joints = 500;

/// Which lines a corner gets.
enum class Lines { along, across, both, none };

/// A longest side under this share of the outline's reach is a piece of a curve, not a side to saw
/// along (ours).
constexpr double min_side_fraction = 0.3;

/// The drawing's axis nearest to a direction; halfway between two the one on its left, so that a
/// turned drawing is framed alike.
Vector nearest_axis(Vector way) {
  for (const Vector axis : {Vector{1.0, 0.0}, Vector{0.0, 1.0}, Vector{-1.0, 0.0}}) {
    const double ahead = plane::dot(axis, way);
    const double aside = plane::cross(axis, way);
    if (ahead > aside && ahead >= -aside) return axis;
  }
  return {0.0, -1.0};
}

/// The outline in a frame along its longest side, or along the drawing's axes if it is round.
class Frame {
 public:
  explicit Frame(const Outline& outline) : outline_(outline), origin_(outline.front()) {
    double longest_m = 0.0;
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Joint side = plane::side(outline, i);
      constexpr double hair_m = 1e-6;
      if (plane::length_m(side) < longest_m + hair_m) continue;
      longest_m = plane::length_m(side);
      along_ = plane::unit(plane::from_to(side.from, side.to));
    }
    if (longest_m < min_side_fraction * reach_m(outline)) along_ = nearest_axis(along_);
  }

  /// The distance along the longest side, and the distance to its left.
  double u(Point p) const { return plane::dot(plane::from_to(origin_, p), along_); }
  double v(Point p) const { return plane::cross(along_, plane::from_to(origin_, p)); }

  /// The chords of the line across at `u`, and of the line along at `v`.
  const std::vector<Joint>& across_at(double u) {
    const auto [known, is_new] = across_.try_emplace(u);
    if (is_new) {
      known->second =
          chords::across(outline_, plane::moved(origin_, along_, u), plane::left_of(along_));
    }
    return known->second;
  }
  const std::vector<Joint>& along_at(double v) {
    const auto [known, is_new] = along_lines_.try_emplace(v);
    if (is_new) {
      known->second =
          chords::across(outline_, plane::moved(origin_, plane::left_of(along_), v), along_);
    }
    return known->second;
  }

 private:
  const Outline& outline_;
  Point origin_;
  Vector along_;
  /// Lines computed before, because the sets share most of them.
  std::map<double, std::vector<Joint>> across_;
  std::map<double, std::vector<Joint>> along_lines_;
};

/// Sorts the positions that lines in one direction must pass through, with the outline's ends first
/// and last.
std::vector<double> sorted_breaks(std::vector<double> breaks) {
  std::sort(breaks.begin(), breaks.end());
  const auto same = [](double a, double b) { return b - a < one_line_m; };
  breaks.erase(std::unique(breaks.begin(), breaks.end(), same), breaks.end());
  return breaks;
}

std::vector<double> extent(const Outline& outline, double (Frame::*of)(Point) const,
                           const Frame& frame) {
  const auto [min, max] =
      std::minmax_element(outline.begin(), outline.end(),
                          [&](Point a, Point b) { return (frame.*of)(a) < (frame.*of)(b); });
  return {(frame.*of)(*min), (frame.*of)(*max)};
}

/// The positions that lines in one direction must pass through, and the widest gap between them.
struct Breaks {
  std::vector<double> at_m;
  double widest_m = 0.0;
};

Breaks breaks_at(std::vector<double> at_m) {
  Breaks breaks{sorted_breaks(std::move(at_m)), 0.0};
  for (std::size_t i = 1; i < breaks.at_m.size(); ++i) {
    breaks.widest_m = std::max(breaks.widest_m, breaks.at_m[i] - breaks.at_m[i - 1]);
  }
  return breaks;
}

/// The number of parts into which a stretch must be divided so that none exceeds `max_m`.
int parts_of(double stretch_m, double max_m) {
  constexpr double rounding = 1e-6;
  const double parts = std::ceil(stretch_m / max_m - rounding);
  if (!(parts < max_parts)) return max_parts;
  return std::max(1, static_cast<int>(parts));
}

/// Lines at the inner breaks, and between them so that no stretch exceeds `max_m`.
std::vector<double> lines_between(const Breaks& breaks, double max_m) {
  std::vector<double> lines;
  for (std::size_t i = 1; i < breaks.at_m.size(); ++i) {
    const double from_m = breaks.at_m[i - 1];
    const double gap_m = breaks.at_m[i] - from_m;
    const int parts = parts_of(gap_m, max_m);
    for (int k = 1; k < parts; ++k) lines.push_back(from_m + gap_m * k / parts);
    if (i + 1 < breaks.at_m.size()) lines.push_back(breaks.at_m[i]);
  }
  return lines;
}

/// The largest distances between lines in the two directions.
struct Stretches {
  double along_m = 0.0;
  double across_m = 0.0;
};

/// The size of the parts when a gap is divided evenly, and the longest stretch allowed in other
/// gaps: as long as the spacing allows without this gap being divided into fewer parts.
struct Division {
  double part_m = 0.0;
  double max_m = 0.0;
};

Division divide(double gap_m, int parts, double spacing_m) {
  constexpr double just_under = 0.999;
  const double part_m = gap_m / parts;
  if (parts == 1) return {part_m, std::max(part_m, spacing_m)};
  return {part_m, std::max(part_m, std::min(spacing_m, just_under * gap_m / (parts - 1)))};
}

/// Stretches worth trying: in one direction the widest gap is divided into as many parts as the
/// spacing requires and a few more; in the other, into as many as spacing and aspect then require
/// and a few more.
std::vector<Stretches> stretches(double along_m, double across_m, const JointLimits& limits) {
  std::vector<Stretches> tried;
  const auto keep = [&tried](const Division& along, const Division& across) {
    for (const double a : {along.max_m, along.part_m}) {
      for (const double b : {across.max_m, across.part_m}) tried.push_back({a, b});
    }
  };
  const auto try_from = [&](double first_m, double second_m, bool first_is_along) {
    const int fewest = parts_of(first_m, limits.spacing_m);
    for (int i = fewest; i <= fewest + max_extra_parts; ++i) {
      const Division first = divide(first_m, i, limits.spacing_m);
      const double max_m = std::min(limits.spacing_m, limits.aspect * first.part_m);
      const int needed = parts_of(second_m, max_m);
      for (int k = needed; k <= needed + max_extra_parts; ++k) {
        const Division second = divide(second_m, k, limits.spacing_m);
        first_is_along ? keep(first, second) : keep(second, first);
      }
    }
  };
  try_from(along_m, across_m, true);
  try_from(across_m, along_m, false);
  return tried;
}

/// All combinations of lines for a few corners; for more corners the same lines for all.
std::vector<std::vector<Lines>> corner_choices(std::size_t corners) {
  constexpr std::array ways{Lines::across, Lines::along, Lines::both};
  std::vector<std::vector<Lines>> choices{{}};
  if (corners > max_free_corners) {
    choices.clear();
    for (const Lines way : ways) choices.emplace_back(corners, way);
    return choices;
  }
  for (std::size_t i = 0; i < corners; ++i) {
    std::vector<std::vector<Lines>> longer;
    for (const std::vector<Lines>& choice : choices) {
      for (const Lines way : ways) {
        longer.push_back(choice);
        longer.back().push_back(way);
      }
    }
    choices = std::move(longer);
  }
  return choices;
}

/// The positions of the lines across, then of those along.
using Lattice = std::pair<std::vector<double>, std::vector<double>>;

/// A set of joints and the length to saw.
struct Grid {
  std::vector<Joint> joints;
  double length_m = 0.0;
};

void add(Grid& grid, const std::vector<Joint>& chords) {
  for (const Joint& chord : chords) {
    grid.joints.push_back(chord);
    grid.length_m += plane::length_m(chord);
  }
}

/// Adds the grids for one way of treating the corners.
void add_grids(const Outline& outline, Frame& frame, const std::vector<Lines>& choice,
               const std::vector<Point>& corners, const JointLimits& limits,
               std::set<Lattice>& known, std::vector<Grid>& grids) {
  std::vector<double> us = extent(outline, &Frame::u, frame);
  std::vector<double> vs = extent(outline, &Frame::v, frame);
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const bool both = choice[i] == Lines::both;
    if (both || choice[i] == Lines::across) us.push_back(frame.u(corners[i]));
    if (both || choice[i] == Lines::along) vs.push_back(frame.v(corners[i]));
  }
  const Breaks along = breaks_at(std::move(us));
  const Breaks across = breaks_at(std::move(vs));
  for (const Stretches& tried : stretches(along.widest_m, across.widest_m, limits)) {
    const Lattice lattice{lines_between(along, tried.along_m),
                          lines_between(across, tried.across_m)};
    if (!known.insert(lattice).second) continue;
    Grid grid;
    for (const double u : lattice.first) add(grid, frame.across_at(u));
    for (const double v : lattice.second) add(grid, frame.along_at(v));
    grids.push_back(std::move(grid));
  }
}

}  // namespace

std::vector<std::vector<Joint>> grid_joint_sets(const Outline& outline, const JointLimits& limits) {
  Frame frame(outline);
  const std::vector<Point> corners = re_entrant_corners(outline);
  std::set<Lattice> known;
  std::vector<Grid> grids;
  for (const std::vector<Lines>& choice : corner_choices(corners.size())) {
    add_grids(outline, frame, choice, corners, limits, known, grids);
  }
  if (corners.size() > max_free_corners) {
    std::erase_if(grids, [](const Grid& grid) { return grid.joints.size() > max_joints; });
  }
  if (grids.empty()) {
    const std::vector<Lines> choice(corners.size(), Lines::none);
    add_grids(outline, frame, choice, corners, limits, known, grids);
  }
  std::stable_sort(grids.begin(), grids.end(), [](const Grid& a, const Grid& b) {
    return rounded(a.length_m) < rounded(b.length_m);
  });
  if (grids.size() > max_sets) grids.resize(max_sets);
  std::vector<std::vector<Joint>> sets;
  sets.reserve(grids.size());
  for (Grid& grid : grids) sets.push_back(std::move(grid.joints));
  return sets;
}

}  // namespace slabtide
