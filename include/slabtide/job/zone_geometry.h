#pragma once

#include <optional>
#include <string>

#include "slabtide/core/geometry.h"
#include "slabtide/job/job.h"

namespace slabtide {

double area_m2(const Outline& outline);
double perimeter_m(const Outline& outline);
Point centroid(const Outline& outline);
bool contains(const Outline& outline, Point point);

/// The outline of a walk: its line offset by half the width on both sides with square ends.
/// Error: std::invalid_argument for fewer than two points or a width that is not positive.
Outline outline_of_walk(const WalkPath& path);

/// Why the outline cannot be used (crosses itself, no area, too few points), in words for
/// the user; empty where it can.
std::optional<std::string> outline_fault(const Outline& outline);

/// Volume of concrete: area times thickness, and the faces that stand below or above the
/// slab (length x height x 0.3 m of tread behind each).
double volume_m3(const Zone& zone);

}  // namespace slabtide
