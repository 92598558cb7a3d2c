#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

// Every measuring function throws std::invalid_argument for a point that is not finite or lies more
// than 100 km from the drawing's origin, besides the errors listed at each.

namespace slabtide {

/// Area, perimeter and centroid of an outline, whichever way round it runs. Error:
/// std::invalid_argument for the centroid of no points.
double area_m2(const Outline& outline);
double perimeter_m(const Outline& outline);
Point centroid(const Outline& outline);
/// Points on the outline count as inside.
bool contains(const Outline& outline, Point point);

/// How far outside the point is; 0 for a point inside or on the outline.
/// Error: std::invalid_argument for an outline without points.
double outside_by_m(const Outline& outline, Point point);

/// The same ring run counter-clockwise, from the same first point.
Outline counter_clockwise(Outline outline);

/// Where the walkway's line bends more tightly than its width allows, in words for the user; empty
/// if it can be drawn.
/// Error: std::invalid_argument for fewer than two points, two equal points in a row or a
/// width that is not positive.
std::optional<std::string> walkway_fault(const Walkway& path);

/// The outline of a walkway: its line offset by half the width on both sides, mitred at the bends,
/// with square ends. If `walkway_fault` and `outline_fault` find nothing, its area is the line's
/// length times the width. Errors as for `walkway_fault`.
Outline outline_of_walkway(const Walkway& path);

/// Why the outline cannot be used (crosses itself, has no area, too few points), in words for the
/// user; empty if it can.
std::optional<std::string> outline_fault(const Outline& outline);

/// What is left after a strip of `width_m` is removed along all sides, with corners kept sharp.
/// Empty if nothing is left; several outlines if the strip closes a narrow place.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`) or a width that is
/// not positive.
std::vector<Outline> inset(const Outline& outline, double width_m);

/// Whether a border strip of this width leaves a field inside the outline. Errors as for `inset`.
bool border_fits(const Outline& outline, double width_m);

/// The area both outlines cover.
/// Error: std::invalid_argument for an outline with a fault (`outline_fault`).
double shared_area_m2(const Outline& a, const Outline& b);

/// How far the outline reaches, east to west or north to south, whichever is more.
/// Error: std::invalid_argument for an outline without points.
double reach_m(const Outline& outline);

/// The outline's mean width: the width of the rectangle with the same area and perimeter.
double mean_width_m(const Outline& outline);

/// Length of a walkway's line, and the distance along it of its nearest place to `point`. Errors as
/// for `walkway_fault`.
double line_length_m(const Walkway& path);
double distance_along_m(const Walkway& path, Point point);

/// Volume of concrete: area times thickness, what each face reaches below the slab (length x height
/// beyond the slab's thickness x tread), and what the zone names as extra.
double volume_m3(const Zone& zone);

}  // namespace slabtide
