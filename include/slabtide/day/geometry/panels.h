#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// A piece of a zone between joints.
struct Panel {
  Outline outline;
  double area_m2 = 0.0;
  /// Sides of the smallest box around it that lies along one of its own sides.
  double length_m = 0.0;
  double width_m = 0.0;
  /// The direction of the longer side, of length 1.
  double along_x = 1.0;
  double along_y = 0.0;
  Point centre;

  /// Longer side over shorter.
  double aspect() const { return length_m / width_m; }
};

/// All panels of a zone.
struct Panels {
  std::vector<Panel> panels;
  /// Joints (by index) with an end that reaches neither a side nor another joint.
  std::vector<std::size_t> loose_joints;
};

/// An outline as it is, as one panel. Errors as for `split_into_panels`.
Panel panel_of(Outline outline);

/// The panels the joints cut the outline into; their areas sum to the outline's. What lies
/// outside of it cuts nothing. None where the outline is narrower than 2 mm.
/// Error: std::invalid_argument for under three points, and for a point that is no number or
/// beyond any plan.
Panels split_into_panels(const Outline& outline, const std::vector<Joint>& joints);

/// How far the panel reaches in a direction of length 1.
/// Error: std::invalid_argument for a direction of another length and a panel without an outline.
double extent_m(const Panel& panel, double x, double y);

}  // namespace slabtide
