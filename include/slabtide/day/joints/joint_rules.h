#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Limits on the panels of a zone.
struct JointLimits {
  double spacing_m = 0.0;      ///< for the longer side of a panel
  double aspect = 0.0;         ///< for the longer side over the shorter
  double wished_aspect = 0.0;  ///< for the panels of a walkway; elsewhere the same as `aspect`
};

/// Spacing by thickness and aggregate, up to a maximum. Sources: data/practice.toml, [joints].
JointLimits joint_limits(const Zone& zone, Aggregate aggregate, const JointSpacing& rules);

/// Rules for panels and joints.
enum class JointRule {
  spacing,
  aspect,
  corner,         ///< an inside corner without a joint
  loose_end,      ///< a joint ends inside a panel, and its crack will run on
  wished_aspect,  ///< a preference; all other rules should be kept
};

/// A broken rule and where it is broken.
struct JointFault {
  JointRule rule = JointRule::spacing;
  /// Index of the panel, the corner or the joint, from 0.
  std::size_t number = 0;
  Point at;               ///< the middle of the panel, the corner, or the middle of the joint
  double length_m = 0.0;  ///< of the panel
  double width_m = 0.0;
  double limit = 0.0;  ///< m, or a ratio; 0 if the rule has none
};

/// True if the rule may be broken.
bool is_preference(const JointFault& fault);

/// Checks panels and joints of a zone against the limits; one percent over is accepted. First by
/// panel, then corners, then loose ends. Error: std::invalid_argument for a point that is not
/// finite or is outside any plan, a panel or limit that is not positive, and a loose end with an
/// invalid joint index.
std::vector<JointFault> check_joints(const Outline& outline, const std::vector<Joint>& joints,
                                     const Panels& panels, const JointLimits& limits);

/// "panel 2 about (10, 2): 12 by 4 ft, 3.0 to 1, over 1.5 to 1". Places are in the user's units, on
/// the user's drawing.
std::string fault_words(const JointFault& fault, const Job& job);

/// "(-14, 6)" in ft or m.
std::string place_words(Point place, UnitSystem units);
/// "12.5 ft".
std::string distance_words(double m, UnitSystem units);
/// "7 by 4.5 ft".
std::string size_words(double length_m, double width_m, UnitSystem units);

}  // namespace slabtide
