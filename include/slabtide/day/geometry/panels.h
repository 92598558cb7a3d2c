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
  /// Sides of the smallest box around it that has a side along one of its own sides.
  double length_m = 0.0;
  double width_m = 0.0;
  /// The direction of the longer side, a unit vector.
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

/// An unchanged outline as one panel. Errors as for `split_into_panels`.
Panel panel_of(Outline outline);

/// The panels into which the joints cut the outline; their areas sum to the outline's. Joints
/// outside it cut nothing. Empty if the outline is narrower than 2 mm. Error: std::invalid_argument
/// for fewer than three points, and for a point that is not finite or is outside any plan.
Panels split_into_panels(const Outline& outline, const std::vector<Joint>& joints);

/// The panel's extent in a unit direction. Error: std::invalid_argument for a direction of another
/// length and for a panel without an outline.
double extent_m(const Panel& panel, double x, double y);

}  // namespace slabtide
