#include "slabtide/job/geometry/canonical.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace slabtide {

namespace {

/// Measures places from another origin, rounded to a grid through that origin.
class Frame {
 public:
  explicit Frame(Point origin) : origin_(origin) {}

  void put(Point& place) const {
    place = {on_grid(place.x_m - origin_.x_m), on_grid(place.y_m - origin_.y_m)};
  }

  void put(std::vector<Point>& line) const {
    for (Point& place : line) put(place);
    line.erase(std::unique(line.begin(), line.end()), line.end());
  }

  void put(Zone& zone) const {
    put(zone.outline);
    while (zone.outline.size() > 1 && zone.outline.front() == zone.outline.back()) {
      zone.outline.pop_back();
    }
    if (zone.path) put(zone.path->line);
    for (FormedFace& face : zone.faces) {
      if (face.at) put(*face.at);
    }
    put(zone.tied_edges);
    if (zone.joints) put(*zone.joints);
  }

  /// Joints or obstacles. A joint or wall that has no length left is removed.
  template <class Segment>
  void put(std::vector<Segment>& segments) const {
    for (Segment& segment : segments) {
      put(segment.from);
      put(segment.to);
    }
    std::erase_if(segments,
                  [](const Segment& one) { return has_length(one) && one.from == one.to; });
  }

 private:
  static bool has_length(const Joint&) { return true; }
  static bool has_length(const Obstacle& obstacle) { return obstacle.kind == ObstacleKind::wall; }

  /// A binary fraction, so that sums and differences of places are exact.
  static double on_grid(double m) {
    constexpr double per_m = 1 << 20;
    return std::round(m * per_m) / per_m;
  }

  Point origin_;
};

std::size_t place_in_order(const Job& job, const Zone& zone) {
  const auto& order = job.pour.placing_sequence;
  return static_cast<std::size_t>(std::find(order.begin(), order.end(), zone.name) - order.begin());
}

/// Where placing begins; the drawing's origin if nothing is drawn.
Point first_point(const std::vector<Zone>& zones) {
  if (zones.empty()) return {};
  const Zone& first = zones.front();
  const std::vector<Point>& points = first.path ? first.path->line : first.outline;
  return points.empty() ? Point{} : points.front();
}

}  // namespace

Job canonical(Job job) {
  std::stable_sort(job.zones.begin(), job.zones.end(), [&job](const Zone& a, const Zone& b) {
    return place_in_order(job, a) < place_in_order(job, b);
  });
  const Point origin = first_point(job.zones);
  const Frame frame(origin);
  for (Zone& zone : job.zones) frame.put(zone);
  frame.put(job.obstacles);
  job.drawing_origin = {job.drawing_origin.x_m + origin.x_m, job.drawing_origin.y_m + origin.y_m};
  return job;
}

Point on_drawing(Point place, const Job& job) {
  return {place.x_m + job.drawing_origin.x_m, place.y_m + job.drawing_origin.y_m};
}

}  // namespace slabtide
