#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

// Cutting an outline along straight lines that may end anywhere, private to this folder.
// Boost.Geometry is not used: version 1.74 loses pieces where sides touch
// (job/geometry/clipping.h), and joints touch sides and each other everywhere. Walking around the
// faces of the drawing keeps the whole area.

namespace slabtide::faces {

struct Face {
  Outline ring;          ///< counter-clockwise
  double area_m2 = 0.0;  ///< minus what closed lines inside it cut out
};

struct Faces {
  std::vector<Face> faces;
  /// Lines (by index) that partly bound nothing, because an end reaches neither a side nor another
  /// line.
  std::vector<std::size_t> loose;
};

/// The faces into which the lines cut the outline; their areas sum to the outline's. Lines outside
/// it are ignored.
Faces cut(const Outline& outline, const std::vector<Joint>& lines);

}  // namespace slabtide::faces
