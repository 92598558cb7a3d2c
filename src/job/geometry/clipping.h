#pragma once

#include "slabtide/core/geometry.h"

// Intersections of polygons, private to this folder. Boost.Geometry 1.74 loses pieces where sides
// touch (up to 0.03 m2 of 20 was seen), which happens with a grid through an outline's corners and
// with adjacent zones. Clipping to straight lines and adding moments is exact there.

namespace slabtide::clipping {

/// Area and its first moments. They are additive: those of a region minus a part of it are the
/// difference.
struct Moments {
  double area_m2 = 0.0;
  double x_m3 = 0.0;
  double y_m3 = 0.0;

  Moments& operator+=(const Moments& other);
  Moments& operator-=(const Moments& other);
};

/// Signed (counter-clockwise is positive), about `origin`, which should be close to the ring.
Moments moments_of(const Outline& ring, Point origin);

/// The side of a line on which `x * x_m + y * y_m` is at least `at_least`.
struct HalfPlane {
  double x = 0.0;
  double y = 0.0;
  double at_least = 0.0;

  double inside_by(Point p) const { return x * p.x_m + y * p.y_m - at_least; }
};

/// The part of the ring inside the half-plane. If that is several parts, they are joined by edges
/// along the line, which add no area.
Outline clipped(const Outline& ring, const HalfPlane& keep);

}  // namespace slabtide::clipping
