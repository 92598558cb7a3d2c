#include "plan_view.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "report/markup/svg.h"

namespace slabtide {

namespace {

// Dimensions of the drawing, in its own units (ours).
constexpr double drawing_width = 1000.0;
constexpr double min_plan_height = 320.0;
/// Obstacles further from the zones than this fraction of the zones' extent are cut off.
constexpr double obstacle_fraction = 0.45;
constexpr double margin_fraction = 0.07;
constexpr double min_margin_m = 1.0;

struct PlanBox {
  Point low;
  Point high;

  void include(Point p) {
    low = {std::min(low.x_m, p.x_m), std::min(low.y_m, p.y_m)};
    high = {std::max(high.x_m, p.x_m), std::max(high.y_m, p.y_m)};
  }
  double longest_m() const { return std::max(high.x_m - low.x_m, high.y_m - low.y_m); }
  PlanBox grown(double by_m) const {
    return {{low.x_m - by_m, low.y_m - by_m}, {high.x_m + by_m, high.y_m + by_m}};
  }
  Point nearest(Point p) const {
    return {std::clamp(p.x_m, low.x_m, high.x_m), std::clamp(p.y_m, low.y_m, high.y_m)};
  }
};

PlanBox zones_box(const Job& job) {
  PlanBox box{job.zones.front().outline.front(), job.zones.front().outline.front()};
  for (const Zone& zone : job.zones) {
    for (const Point& p : zone.outline) box.include(p);
  }
  return box;
}

PlanBox site_box(const Job& job) {
  const PlanBox zones = zones_box(job);
  const PlanBox max = zones.grown(obstacle_fraction * zones.longest_m());
  PlanBox box = zones;
  for (const Obstacle& obstacle : job.obstacles) {
    const double r = obstacle.kind == ObstacleKind::tree ? obstacle.radius_m : 0.0;
    const Point other = obstacle.kind == ObstacleKind::tree ? obstacle.from : obstacle.to;
    for (const Point& p : {obstacle.from, other}) {
      box.include(max.nearest({p.x_m - r, p.y_m - r}));
      box.include(max.nearest({p.x_m + r, p.y_m + r}));
    }
  }
  return box.grown(std::max(min_margin_m, margin_fraction * box.longest_m()));
}

/// Path data of points relative to the first. No space is needed before a minus sign.
std::string relative(const std::vector<Point>& units) {
  std::string data;
  for (std::size_t i = 0; i < units.size(); ++i) {
    const Point before = i == 0 ? Point{} : units[i - 1];
    const std::string x = short_number(units[i].x_m - before.x_m, 0);
    const std::string y = short_number(units[i].y_m - before.y_m, 0);
    data += i == 0 ? "M" : (i == 1 ? "l" : (x.front() == '-' ? "" : " "));
    data += x;
    if (y.front() != '-') data += ' ';
    data += y;
  }
  return data;
}

}  // namespace

PlanView::PlanView(const Job& job, const Frame& frame) : strip_(frame.strip) {
  const PlanBox box = site_box(job);
  low_ = box.low;
  high_ = box.high;
  width_ = drawing_width;
  units_per_m_ = drawing_width / (high_.x_m - low_.x_m);
  const double tall = (high_.y_m - low_.y_m) * units_per_m_;
  // A tall site is scaled so that its height fits, and is centred.
  if (tall > frame.max_plan_height) {
    units_per_m_ *= frame.max_plan_height / tall;
    const double spare_m = drawing_width / units_per_m_ - (high_.x_m - low_.x_m);
    low_.x_m -= spare_m / 2.0;
    high_.x_m += spare_m / 2.0;
  }
  const double spare = min_plan_height / units_per_m_ - (high_.y_m - low_.y_m);
  if (spare > 0.0) {
    low_.y_m -= spare / 2.0;
    high_.y_m += spare / 2.0;
  }
  height_ = std::round((high_.y_m - low_.y_m) * units_per_m_) + strip_;
}

double PlanView::plan_height() const { return height_ - strip_; }

double PlanView::x(double x_m) const { return std::round((x_m - low_.x_m) * units_per_m_); }
double PlanView::y(double y_m) const { return std::round((high_.y_m - y_m) * units_per_m_); }

std::string PlanView::ring(const Outline& outline) const {
  std::vector<Point> units;
  for (const Point& p : outline) {
    const Point unit{x(p.x_m), y(p.y_m)};
    if (units.empty() || unit != units.back()) units.push_back(unit);
  }
  return relative(units) + "z";
}

std::string PlanView::line(const ContourLine& line) const {
  std::vector<Point> units;
  for (const Point& p : line) {
    const Point unit{x(p.x_m), y(p.y_m)};
    if (units.empty() || unit != units.back()) units.push_back(unit);
  }
  return relative(units);
}

std::string PlanView::box() const {
  return fmt::format("0 0 {} {}", short_number(width_), short_number(height_));
}

}  // namespace slabtide
