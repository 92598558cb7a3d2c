#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/mix.h"

// The parts of the slab and what stands around them, on a flat plan.

namespace slabtide {

/// What the slab lies on.
enum class BaseKind { gravel, soil, sand, insulation };

/// The layer under the slab.
struct Base {
  BaseKind kind = BaseKind::gravel;
  double depth_m = 0.1;
};

/// What the surface becomes.
enum class Finish { stamp, texture_roll, broom, float_finish, trowel };

/// A strip along the outline with a finish of its own.
struct Border {
  double width_m = 0.0;
  Finish finish = Finish::broom;
};

/// A formed vertical face: a step's riser or a slab's exposed edge that is finished.
struct FormedFace {
  double length_m = 0.0;
  double height_m = 0.0;
  /// The compass direction the face looks toward, degrees clockwise from north; absent
  /// where the user does not say: then the form is taken to be in the shade.
  std::optional<double> facing_deg;
  /// Where along the plan it stands; the centre of the zone where not given.
  std::optional<Point> at;
};

/// The surface's colour: how much sun it takes up.
enum class Colour { grey, white, red_or_tan, brown_or_charcoal };

/// A joint drawn by the user: tooled or sawn along this line.
struct Joint {
  Point from;
  Point to;
};

/// A walk: its centre line and width.
struct Walkway {
  std::vector<Point> line;
  double width_m = 0.0;
};

/// An area placed as one.
struct Zone {
  std::string name;
  Outline outline;              ///< from the path where that was given
  std::optional<Walkway> path;  ///< present for a walk
  double thickness_m = 0.0;
  Base base;
  Finish finish = Finish::broom;
  std::optional<Border> border;
  std::vector<FormedFace> faces;
  Colour colour = Colour::grey;
  std::optional<double> absorptance;  ///< measured while wet; beats the colour
  /// No direct sun all day: under a roof, in a narrow court. Says more than obstacles can.
  bool shaded = false;
  /// Cast against or dowelled to a structure.
  bool tied = false;
  /// The compass direction placing works toward, degrees clockwise from north; a walk is
  /// then placed along its line from the end that lies back. Absent: a walk is placed from
  /// its first point; an outline along its longer side (of the smallest box around it),
  /// starting at the end where its first point lies.
  std::optional<double> placed_toward_deg;
  /// Placing begins here when fixed by hand; else it follows the zone before.
  std::optional<UtcTime> placed_at;
  /// Replaces the mix's admixtures for this zone; an empty list means none.
  std::optional<std::vector<Admixture>> admixtures;
  /// Drawn by the user; absent means the program proposes them.
  std::optional<std::vector<Joint>> joints;
  SourcePosition where;
};

/// What throws shade.
enum class ObstacleKind { wall, tree };

/// A wall or a tree on the site plan.
struct Obstacle {
  std::string name;
  ObstacleKind kind = ObstacleKind::wall;
  /// A wall stands on the segment from -> to; a tree is a circle about `from`.
  Point from;
  Point to;
  double radius_m = 0.0;
  double height_m = 0.0;
  /// Share of the direct light it lets through, 0 to 1.
  double light_through = 0.0;
};

}  // namespace slabtide
