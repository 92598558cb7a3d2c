#include "shade.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double pi = std::numbers::pi;
constexpr int directions = 360;  // one a degree; method: at least 72; a wall's end is then within
                                 // 0.002 of F
constexpr double touching_m = 0.001;

double dot(Point a, Point b) { return a.x_m * b.x_m + a.y_m * b.y_m; }
double cross(Point a, Point b) { return a.x_m * b.y_m - a.y_m * b.x_m; }
Point minus(Point a, Point b) { return {a.x_m - b.x_m, a.y_m - b.y_m}; }
bool finite(Point p) { return std::isfinite(p.x_m) && std::isfinite(p.y_m); }

/// The level unit vector toward a compass direction.
Point toward(double azimuth_deg) {
  const double azimuth = azimuth_deg * radians_per_degree;
  return {std::sin(azimuth), std::cos(azimuth)};
}

/// The middle of a degree.
double middle_deg(std::size_t degree) { return static_cast<double>(degree) + 0.5; }

std::vector<Point> directions_all_round() {
  std::vector<Point> all_round;
  for (std::size_t i = 0; i < directions; ++i) all_round.push_back(toward(middle_deg(i)));
  return all_round;
}

/// The way to a place from the origin.
double azimuth_deg(Point p) { return std::atan2(p.x_m, p.y_m) / radians_per_degree; }

/// The degree of the compass, 0 to 359.
std::size_t round_north(int degree) {
  return static_cast<std::size_t>((degree % directions + directions) % directions);
}

/// Distance from the origin to the nearest point of the segment.
double distance_to_segment_m(Point from, Point span) {
  const double length2 = dot(span, span);
  const double along = length2 > 0.0 ? std::clamp(-dot(from, span) / length2, 0.0, 1.0) : 0.0;
  return std::hypot(from.x_m + along * span.x_m, from.y_m + along * span.y_m);
}

/// Distance along the ray from the origin; a wall seen edge-on has no width and is not hit.
std::optional<double> distance_to_wall_m(Point from, Point span, Point direction) {
  const double turn = cross(direction, span);
  if (turn == 0.0) return std::nullopt;
  const double along = cross(from, direction) / turn;
  const double distance = cross(from, span) / turn;
  if (distance < 0.0 || along < 0.0 || along > 1.0) return std::nullopt;
  return distance;
}

/// Distance along the ray from the origin, which is outside the circle.
std::optional<double> distance_to_circle_m(Point centre, double radius_m, Point direction) {
  const double ahead = dot(centre, direction);
  const double aside = cross(centre, direction);
  const double half_chord2 = radius_m * radius_m - aside * aside;
  if (ahead <= 0.0 || half_chord2 < 0.0) return std::nullopt;
  return ahead - std::sqrt(half_chord2);
}

/// cos² of the elevation.
double level_fraction_above(double slope) { return 1.0 / (1.0 + slope * slope); }

/// pi/4 - w/2 - sin(2w)/4, over its value at w = 0.
double face_fraction_above(double slope) {
  const double w = std::atan(slope);
  return 1.0 - (2.0 * w + std::sin(2.0 * w)) / pi;
}

void require_sound(const Obstacle& o) {
  if (!finite(o.from) || !finite(o.to) || !(o.height_m >= 0.0) || !(o.radius_m >= 0.0))
    throw std::invalid_argument("shade: an obstacle's place or size is not usable");
  if (!(o.light_through >= 0.0 && o.light_through <= 1.0))
    throw std::invalid_argument("shade: a share of light is not within 0 to 1");
  if (!(o.albedo >= 0.0 && o.albedo <= 1.0))
    throw std::invalid_argument("shade: an albedo is not within 0 to 1");
}

}  // namespace

SunDirection::SunDirection(double sun_azimuth_deg, double sun_elevation_deg)
    : azimuth_deg(sun_azimuth_deg),
      up(sun_elevation_deg > 0.0),
      toward(slabtide::toward(sun_azimuth_deg)),
      slope(std::tan(sun_elevation_deg * radians_per_degree)) {}

Surroundings::Surroundings(Point at, const std::vector<Obstacle>& obstacles) {
  if (!finite(at)) throw std::invalid_argument("shade: the place is not finite");
  seen_.reserve(obstacles.size());
  for (const Obstacle& obstacle : obstacles) {
    require_sound(obstacle);
    seen_.push_back(seen_from(at, obstacle));
  }
  if (!seen_.empty()) sort_by_degrees();
}

void Surroundings::sort_by_degrees() {
  std::vector<Degrees> degrees;
  degrees.reserve(seen_.size());
  first_in_degree_.assign(directions + 1, 0);
  for (const Seen& obstacle : seen_) {
    degrees.push_back(degrees_of(obstacle));
    each_of(degrees.back(), [this](std::size_t degree) { ++first_in_degree_[degree + 1]; });
  }
  std::partial_sum(first_in_degree_.begin(), first_in_degree_.end(), first_in_degree_.begin());
  by_degree_.resize(first_in_degree_.back());
  std::vector<std::size_t> next(first_in_degree_.begin(), first_in_degree_.end() - 1);
  for (std::size_t which = 0; which < seen_.size(); ++which) {
    each_of(degrees[which], [&](std::size_t degree) { by_degree_[next[degree]++] = which; });
  }
}

template <class Use>
void Surroundings::each_of(const Degrees& degrees, Use use) {
  std::size_t degree = round_north(degrees.first);
  for (int i = 0; i < degrees.count; ++i) {
    use(degree);
    if (++degree == directions) degree = 0;
  }
}

/// With a degree to spare at either end, so that rounding hides nothing.
Surroundings::Degrees Surroundings::degrees_of(const Seen& obstacle) {
  constexpr Degrees all_round{0, directions};
  constexpr double half_turn_deg = 180.0;
  if (obstacle.touching) return all_round;
  double low_deg = azimuth_deg(obstacle.from);
  double wide_deg = 0.0;
  if (obstacle.kind == ObstacleKind::wall) {
    const Point to{obstacle.from.x_m + obstacle.span.x_m, obstacle.from.y_m + obstacle.span.y_m};
    const double turn_deg = std::remainder(azimuth_deg(to) - low_deg, 2.0 * half_turn_deg);
    low_deg += std::min(turn_deg, 0.0);
    wide_deg = std::abs(turn_deg);
  } else {
    const double away_m = std::hypot(obstacle.from.x_m, obstacle.from.y_m);
    const double half_deg = std::asin(obstacle.radius_m / away_m) / radians_per_degree;
    low_deg -= half_deg;
    wide_deg = 2.0 * half_deg;
  }
  // From close before a wall it cannot be told on which side it runs round.
  if (!(wide_deg < half_turn_deg - 1.0)) return all_round;
  const double first = std::floor(low_deg) - 1.0;
  return {static_cast<int>(first),
          static_cast<int>(std::floor(low_deg + wide_deg) + 1.0 - first) + 1};
}

std::span<const std::size_t> Surroundings::in_direction(double azimuth_deg) const {
  if (!std::isfinite(azimuth_deg)) return {};
  const auto degree = round_north(static_cast<int>(std::floor(std::fmod(azimuth_deg, directions))));
  return std::span(by_degree_)
      .subspan(first_in_degree_[degree], first_in_degree_[degree + 1] - first_in_degree_[degree]);
}

Surroundings::Seen Surroundings::seen_from(Point at, const Obstacle& obstacle) {
  Seen seen{.kind = obstacle.kind,
            .from = minus(obstacle.from, at),
            .span = minus(obstacle.to, obstacle.from),
            .radius_m = obstacle.radius_m,
            .height_m = obstacle.height_m,
            .light_through = obstacle.light_through,
            .albedo = obstacle.albedo,
            .touching = false};
  if (obstacle.kind == ObstacleKind::tree) {
    seen.touching = std::hypot(seen.from.x_m, seen.from.y_m) <= seen.radius_m;
  } else if (distance_to_segment_m(seen.from, seen.span) < touching_m) {
    seen.touching = true;
    seen.light_through = (1.0 + seen.light_through) / 2.0;  // mean of its two sides
  }
  return seen;
}

std::optional<double> Surroundings::distance_m(const Seen& obstacle, Point direction) {
  if (obstacle.touching) return 0.0;
  if (obstacle.kind == ObstacleKind::wall)
    return distance_to_wall_m(obstacle.from, obstacle.span, direction);
  return distance_to_circle_m(obstacle.from, obstacle.radius_m, direction);
}

double Surroundings::sunlit_fraction(const SunDirection& sun) const {
  if (!sun.up) return 0.0;
  if (seen_.empty()) return 1.0;
  double fraction = 1.0;
  for (const std::size_t which : in_direction(sun.azimuth_deg)) {
    const Seen& obstacle = seen_[which];
    const std::optional<double> distance = distance_m(obstacle, sun.toward);
    if (distance && obstacle.height_m > *distance * sun.slope) fraction *= obstacle.light_through;
  }
  return fraction;
}

void Surroundings::collect(double azimuth_deg, Point direction, std::vector<Hit>& hits) const {
  hits.clear();
  for (const std::size_t which : in_direction(azimuth_deg)) {
    const Seen& obstacle = seen_[which];
    const std::optional<double> distance = distance_m(obstacle, direction);
    if (!distance || obstacle.height_m <= 0.0) continue;
    const double slope =
        *distance > 0.0 ? obstacle.height_m / *distance : std::numeric_limits<double>::infinity();
    hits.push_back({which, slope, obstacle.light_through});
  }
}

double Surroundings::open_fraction(std::vector<Hit>& hits, ShareAbove above) {
  std::sort(hits.begin(), hits.end(), [](const Hit& a, const Hit& b) { return a.slope > b.slope; });
  double open = 0.0;
  double through = 1.0;
  double counted = 0.0;  // fraction of this direction that lies above the bands processed so far
  for (const Hit& hit : hits) {
    const double above_hit = above(hit.slope);
    open += through * (above_hit - counted);
    counted = above_hit;
    through *= hit.light_through;
  }
  return open + through * (1.0 - counted);
}

std::optional<Surroundings::Hit> Surroundings::highest_of(const std::vector<Hit>& hits) const {
  std::optional<Hit> highest;
  for (const Hit& hit : hits) {
    if (!seen_[hit.which].touching && (!highest || hit.slope > highest->slope)) highest = hit;
  }
  return highest;
}

Point Surroundings::normal_of(const Seen& obstacle) {
  if (obstacle.kind == ObstacleKind::tree) {
    const double away_m = std::hypot(obstacle.from.x_m, obstacle.from.y_m);
    return {-obstacle.from.x_m / away_m, -obstacle.from.y_m / away_m};
  }
  const double length_m = std::hypot(obstacle.span.x_m, obstacle.span.y_m);
  const Point normal{-obstacle.span.y_m / length_m, obstacle.span.x_m / length_m};
  return dot(normal, obstacle.from) < 0.0 ? normal : Point{-normal.x_m, -normal.y_m};
}

Surroundings::SkySeen Surroundings::look_round() const {
  if (seen_.empty()) return {1.0, {}};
  static const std::vector<Point> all_round = directions_all_round();
  std::vector<Hit> hits;
  std::vector<double> fractions(seen_.size());
  double sum = 0.0;
  for (std::size_t i = 0; i < directions; ++i) {
    collect(middle_deg(i), all_round[i], hits);
    if (const auto highest = highest_of(hits)) {
      fractions[highest->which] +=
          (1.0 - level_fraction_above(highest->slope)) * (1.0 - highest->light_through);
    }
    sum += open_fraction(hits, level_fraction_above);
  }
  SkySeen sky{sum / directions, {}};
  for (std::size_t i = 0; i < seen_.size(); ++i) {
    if (fractions[i] > 0.0)
      sky.sides.push_back({fractions[i] / directions, normal_of(seen_[i]), seen_[i].albedo});
  }
  return sky;
}

double Surroundings::sky_view_of_face(double facing_deg) const {
  if (!std::isfinite(facing_deg)) throw std::invalid_argument("shade: the facing is not finite");
  if (seen_.empty()) return 0.5;
  std::vector<Hit> hits;
  double sum = 0.0;
  double weights = 0.0;
  for (int i = 0; i < directions; ++i) {
    const double aside_deg = 180.0 * (i + 0.5) / directions - 90.0;
    const double weight = std::cos(aside_deg * radians_per_degree);
    collect(facing_deg + aside_deg, toward(facing_deg + aside_deg), hits);
    sum += weight * open_fraction(hits, face_fraction_above);
    weights += weight;
  }
  return 0.5 * sum / weights;
}

}  // namespace slabtide
