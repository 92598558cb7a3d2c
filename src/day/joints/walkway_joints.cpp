#include "walkway_joints.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "day/geometry/chords.h"
#include "job/geometry/zone_geometry.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

using plane::from_to;
using plane::Vector;

/// The same angle as for the corners of an outline.
constexpr double corner_rad = 20.0 * radians_per_degree;
/// From this angle on, a single joint across the bend would leave corners sharper than 60 degrees,
/// which break off. Two joints, perpendicular to the two legs, leave a panel in the bend instead
/// (ours).
constexpr double sharp_bend_rad = 60.0 * radians_per_degree;
/// How many joints more than needed are tried in each run.
constexpr int max_extra_panels = 3;

/// A position along the walkway's line where a joint crosses it.
struct Station {
  double at_m = 0.0;
  Vector ahead;  ///< the joint is perpendicular to this
};

/// A stretch without a corner, to be divided evenly.
struct Run {
  double from_m = 0.0;
  double to_m = 0.0;
};

/// The walkway's line by distance along it.
class Way {
 public:
  explicit Way(const Walkway& path) : path_(path) {
    at_m_.push_back(0.0);
    for (std::size_t i = 1; i < path.line.size(); ++i) {
      at_m_.push_back(at_m_.back() + plane::distance(path.line[i - 1], path.line[i]));
    }
  }

  double length_m() const { return at_m_.back(); }
  std::size_t points() const { return at_m_.size(); }
  double at_m(std::size_t i) const { return at_m_[i]; }

  Point point(double at) const {
    const std::size_t i = leg_of(at);
    return plane::moved(path_.line[i], leg(i), at - at_m_[i]);
  }

  /// The direction of the line at a position, averaged over the walkway's width, so that it turns
  /// smoothly along a curve drawn in straight pieces.
  Vector ahead(double at, const Run& within) const {
    const double half_m = 0.5 * path_.width_m;
    return plane::unit(from_to(point(std::max(within.from_m, at - half_m)),
                               point(std::min(within.to_m, at + half_m))));
  }

  /// The unit direction from point `i` to the next.
  Vector leg(std::size_t i) const { return plane::unit(from_to(path_.line[i], path_.line[i + 1])); }

  double turn_rad(std::size_t i) const {
    return std::atan2(plane::cross(leg(i - 1), leg(i)), plane::dot(leg(i - 1), leg(i)));
  }

 private:
  std::size_t leg_of(double at) const {
    const auto above = std::upper_bound(at_m_.begin() + 1, at_m_.end() - 1, at);
    return static_cast<std::size_t>(above - at_m_.begin()) - 1;
  }

  const Walkway& path_;
  std::vector<double> at_m_;
};

/// The joints that the bends need, and the runs between them.
struct Skeleton {
  std::vector<Station> stations;
  std::vector<Run> runs;
};

Skeleton skeleton_of(const Way& way, double width_m) {
  Skeleton skeleton;
  double from_m = 0.0;
  for (std::size_t i = 1; i + 1 < way.points(); ++i) {
    const double turn = std::abs(way.turn_rad(i));
    if (turn < corner_rad) continue;
    const bool sharp = turn >= sharp_bend_rad;
    const double half_bend_m = sharp ? 0.5 * width_m * std::tan(0.5 * turn) : 0.0;
    const double at_m = way.at_m(i);
    skeleton.runs.push_back({from_m, at_m - half_bend_m});
    if (sharp) {
      skeleton.stations.push_back({at_m - half_bend_m, way.leg(i - 1)});
      skeleton.stations.push_back({at_m + half_bend_m, way.leg(i)});
    } else {
      const Vector a = way.leg(i - 1);
      const Vector b = way.leg(i);
      skeleton.stations.push_back({at_m, plane::unit({a.x + b.x, a.y + b.y})});
    }
    from_m = at_m + half_bend_m;
  }
  skeleton.runs.push_back({from_m, way.length_m()});
  return skeleton;
}

/// Rounded up to a number of parts: at least one, at most more than anyone would saw.
int whole_parts(double parts) {
  constexpr double max_bays = 2000.0;
  return static_cast<int>(std::ceil(std::clamp(parts, 1.0, max_bays)));
}

/// The best number of panels for a run: the smallest number with panels as close to square as
/// wished, else the number that comes closest.
int panels_in(double run_m, double lane_m, const JointLimits& limits) {
  constexpr double rounding = 1e-6;
  const int fewest = whole_parts(run_m / limits.spacing_m - rounding);
  const int max = fewest + whole_parts(run_m / lane_m) + 1;
  int best = fewest;
  double best_aspect = std::numeric_limits<double>::infinity();
  for (int n = fewest; n <= max; ++n) {
    const double panel_m = run_m / n;
    const double aspect = std::max(panel_m / lane_m, lane_m / panel_m);
    if (aspect <= limits.wished_aspect + rounding) return n;
    if (aspect < best_aspect) {
      best = n;
      best_aspect = aspect;
    }
  }
  return best;
}

std::optional<Joint> joint_across(const Zone& walk, const Way& way, const Station& station) {
  const Point at = way.point(station.at_m);
  for (const Joint& chord : chords::across(walk.outline, at, plane::left_of(station.ahead))) {
    if (plane::distance(at, chord) < plane::same_place_m) return chord;
  }
  return std::nullopt;
}

/// Adds the joints along a walkway of several lanes.
void add_lane_joints(const Walkway& path, int lanes, std::vector<Joint>& joints) {
  for (int k = 1; k < lanes; ++k) {
    const double left_m = path.width_m * (static_cast<double>(k) / lanes - 0.5);
    std::vector<Point> line = path.line;
    if (std::abs(left_m) > plane::same_place_m) {
      // The outline of a walkway twice as wide as the offset runs along both offset lines.
      const Outline both = outline_of_walkway({path.line, 2.0 * std::abs(left_m)});
      const auto half = static_cast<std::ptrdiff_t>(line.size());
      if (left_m < 0.0) {
        line.assign(both.begin(), both.begin() + half);
      } else {
        line.assign(both.rbegin(), both.rbegin() + half);
      }
    }
    for (std::size_t i = 1; i < line.size(); ++i) joints.push_back({line[i - 1], line[i]});
  }
}

std::vector<Joint> joints_of(const Zone& walk, const Way& way, int lanes, int extra,
                             const JointLimits& limits) {
  const double width_m = walk.path->width_m;
  Skeleton skeleton = skeleton_of(way, width_m);
  for (const Run& run : skeleton.runs) {
    const double run_m = run.to_m - run.from_m;
    const int panels = panels_in(run_m, width_m / lanes, limits) + extra;
    for (int k = 1; k < panels; ++k) {
      const double at_m = run.from_m + run_m * k / panels;
      skeleton.stations.push_back({at_m, way.ahead(at_m, run)});
    }
  }
  std::sort(skeleton.stations.begin(), skeleton.stations.end(),
            [](const Station& a, const Station& b) { return a.at_m < b.at_m; });
  std::vector<Joint> joints;
  for (const Station& station : skeleton.stations) {
    if (const auto joint = joint_across(walk, way, station)) joints.push_back(*joint);
  }
  add_lane_joints(*walk.path, lanes, joints);
  return joints;
}

}  // namespace

std::vector<std::vector<Joint>> walkway_joint_sets(const Zone& walk, const JointLimits& limits,
                                                   int extra_lanes) {
  const Way way(*walk.path);
  constexpr double rounding = 1e-6;
  const int lanes = whole_parts(walk.path->width_m / limits.spacing_m - rounding) + extra_lanes;
  std::vector<std::vector<Joint>> sets;
  for (int extra = 0; extra <= max_extra_panels; ++extra)
    sets.push_back(joints_of(walk, way, lanes, extra, limits));
  return sets;
}

}  // namespace slabtide
