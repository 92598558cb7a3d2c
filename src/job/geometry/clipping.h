#pragma once

#include "slabtide/core/geometry.h"

// Intersections of polygons, private to this folder. Boost.Geometry 1.74 loses pieces where
// sides touch (seen: up to 0.03 m2 of 20), which is what a grid through an outline's corners
// and zones side by side do; clipping to straight lines and adding moments is exact there.

namespace slabtide::clipping {

/// Area and its first moments, linear: a region less a part of it has their difference.
struct Moments {
  double area_m2 = 0.0;
  double x_m3 = 0.0;
  double y_m3 = 0.0;

  Moments& operator+=(const Moments& other);
  Moments& operator-=(const Moments& other);
};

/// Signed (counter-clockwise positive), about `origin`, which should lie near.
Moments moments_of(const Outline& ring, Point origin);

/// The side of a line where `x * x_m + y * y_m` is at least `at_least`.
struct HalfPlane {
  double x = 0.0;
  double y = 0.0;
  double at_least = 0.0;

  double inside_by(Point p) const { return x * p.x_m + y * p.y_m - at_least; }
};

/// The part of the ring in the half-plane. Where that is several parts, edges along the line
/// join them, which add no area.
Outline clipped(const Outline& ring, const HalfPlane& keep);

}  // namespace slabtide::clipping
