#pragma once

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

// Points and straight lines of the site plan.

namespace slabtide::plane {

/// Points closer than this are the same place: a saw cannot tell them apart.
inline constexpr double same_place_m = 0.002;

/// A direction, or a displacement.
struct Vector {
  double x = 0.0;
  double y = 0.0;
};

Vector from_to(Point a, Point b);
double length(Vector v);
/// The vector scaled to length 1. Error: std::invalid_argument for a vector of length 0.
Vector unit(Vector v);
inline double dot(Vector a, Vector b) { return a.x * b.x + a.y * b.y; }
/// Positive if `b` is to the left of `a`.
inline double cross(Vector a, Vector b) { return a.x * b.y - a.y * b.x; }
inline Vector left_of(Vector v) { return {-v.y, v.x}; }

Point moved(Point point, Vector by, double times);
double distance(Point a, Point b);
double distance(Point point, const Joint& segment);
/// The point of a segment that is nearest to `point`.
Point nearest_on(const Joint& segment, Point point);
Point middle(const Joint& segment);
double length_m(const Joint& segment);

/// Side `i` of an outline.
Joint side(const Outline& outline, std::size_t i);
/// Whether the place is inside, by ray casting, which is cheap; at a side either may be told.
bool encloses(const Outline& outline, Point place);
/// Distance to the nearest side.
double distance_to_sides(Point point, const Outline& outline);

}  // namespace slabtide::plane
