#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// What the panels of a zone are held to.
struct JointLimits {
  double spacing_m = 0.0;      ///< longer side of a panel
  double aspect = 0.0;         ///< longer side over shorter
  double wished_aspect = 0.0;  ///< of a walk's panels; the same as `aspect` elsewhere
};

/// Spacing by thickness and aggregate, capped. Sources: data/practice.toml, [joints].
JointLimits joint_limits(const Zone& zone, Aggregate aggregate, const JointSpacing& rules);

/// What panels and joints are held to.
enum class JointRule {
  spacing,
  aspect,
  corner,         ///< a corner that points inward has no joint
  loose_end,      ///< a joint ends inside a panel: its crack runs on
  wished_aspect,  ///< a preference: every other rule is one to keep
};

/// A rule that is broken, and by what.
struct JointFault {
  JointRule rule = JointRule::spacing;
  /// Of the panel, the corner or the joint; from 0.
  std::size_t number = 0;
  Point at;               ///< the panel's middle, the corner, the joint's middle
  double length_m = 0.0;  ///< of the panel
  double width_m = 0.0;
  double limit = 0.0;  ///< m, or a ratio; 0 where the rule has none
};

/// True for a rule that may be broken.
bool is_preference(const JointFault& fault);

/// Holds panels and joints of a zone against the limits; a hundredth over is let pass. By
/// panel, then corners, then loose ends.
/// Error: std::invalid_argument for a point that is no number or beyond any plan, a panel or a
/// limit without size, and a loose end of no joint.
std::vector<JointFault> check_joints(const Outline& outline, const std::vector<Joint>& joints,
                                     const Panels& panels, const JointLimits& limits);

/// "panel 2 about (10, 2): 12 by 4 ft, 3.0 to 1, over 1.5 to 1". Places in the
/// user's units, on the user's drawing.
std::string fault_words(const JointFault& fault, const Job& job);

/// "(-14, 6)" in ft or m.
std::string place_words(Point place, UnitSystem units);
/// "12.5 ft".
std::string distance_words(double m, UnitSystem units);
/// "7 by 4.5 ft".
std::string size_words(double length_m, double width_m, UnitSystem units);

}  // namespace slabtide
