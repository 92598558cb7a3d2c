#include "clipping.h"

#include <cstddef>

namespace slabtide::clipping {

namespace {

Point between(Point a, Point b, double fraction) {
  return {a.x_m + (b.x_m - a.x_m) * fraction, a.y_m + (b.y_m - a.y_m) * fraction};
}

}  // namespace

Moments& Moments::operator+=(const Moments& other) {
  area_m2 += other.area_m2;
  x_m3 += other.x_m3;
  y_m3 += other.y_m3;
  return *this;
}

Moments& Moments::operator-=(const Moments& other) {
  return *this += {-other.area_m2, -other.x_m3, -other.y_m3};
}

Moments moments_of(const Outline& ring, Point origin) {
  Moments sum;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& next = ring[i + 1 < ring.size() ? i + 1 : 0];
    const Point a{ring[i].x_m - origin.x_m, ring[i].y_m - origin.y_m};
    const Point b{next.x_m - origin.x_m, next.y_m - origin.y_m};
    const double cross = a.x_m * b.y_m - b.x_m * a.y_m;
    sum += {cross / 2.0, (a.x_m + b.x_m) * cross / 6.0, (a.y_m + b.y_m) * cross / 6.0};
  }
  return sum;
}

Outline clipped(const Outline& ring, const HalfPlane& keep) {
  Outline kept;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point& here = ring[i];
    const Point& next = ring[i + 1 < ring.size() ? i + 1 : 0];
    const double here_by = keep.inside_by(here);
    const double next_by = keep.inside_by(next);
    if (here_by >= 0.0) kept.push_back(here);
    if ((here_by >= 0.0) != (next_by >= 0.0)) {
      kept.push_back(between(here, next, here_by / (here_by - next_by)));
    }
  }
  return kept;
}

}  // namespace slabtide::clipping
