#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/mix.h"

// The parts of the slab and the obstacles around them, on a flat plan.

namespace slabtide {

/// What the slab lies on.
enum class BaseKind { gravel, soil, sand, insulation };

/// How the base is kept from the day before until concrete covers it: as it lies, out of the sun
/// (a canopy, plywood), wet, or under insulated tarps.
enum class BaseKept { bare, shaded, wet, covered };

/// The layer under the slab.
struct Base {
  BaseKind kind = BaseKind::gravel;
  double depth_m = 0.1;
  BaseKept kept = BaseKept::bare;
  bool plastic = false;  ///< a vapor retarder lies on it
};

/// The finish of the surface. Exposed aggregate is sprayed with a surface retarder and washed off
/// once the body has set; in a salt finish rock salt is pressed in and washed out the next day.
enum class Finish { stamp, texture_roll, broom, float_finish, trowel, exposed_aggregate, salt };

/// A strip along the outline with its own finish.
struct Border {
  double width_m = 0.0;
  Finish finish = Finish::broom;
};

/// A formed vertical face: a step's riser, or an exposed slab edge that is finished.
struct FormedFace {
  double length_m = 0.0;
  double height_m = 0.0;
  /// How far back from the face concrete stands, where the face reaches below the slab: a step's
  /// tread, the width of a wall or of a thickened edge. Ours: a foot.
  double tread_m = 0.3048;
  /// The compass direction the face looks toward, degrees clockwise from north. If absent the face
  /// is taken to be in the shade.
  std::optional<double> facing_deg;
  /// Where the face stands on the plan; if absent, at the centre of the zone.
  std::optional<Point> at;
  bool tread_is_assumed = false;  ///< nobody told it
};

/// The surface's colour, which determines how much sunlight it absorbs.
enum class Colour { grey, white, red_or_tan, brown_or_charcoal };

/// A joint drawn by the user, tooled or sawn along this line.
struct Joint {
  Point from;
  Point to;
};

/// A walkway: its centre line and width.
struct Walkway {
  std::vector<Point> line;
  double width_m = 0.0;
};

/// An area placed in one go.
struct Zone {
  std::string name;
  Outline outline;              ///< computed from the path if one was given
  std::optional<Walkway> path;  ///< present for a walkway
  double thickness_m = 0.0;
  Base base;
  Finish finish = Finish::broom;
  std::optional<Border> border;
  std::vector<FormedFace> faces;
  /// Concrete that outline, thickness and faces do not tell of: footings, haunches, frost walls.
  double extra_volume_m3 = 0.0;
  Colour colour = Colour::grey;
  std::optional<double> absorptance;  ///< measured on the wet surface; overrides the colour
  /// No direct sun all day, for example under a roof or in a narrow court, where obstacles cannot
  /// express it.
  bool shaded = false;
  /// Cast against or dowelled to a structure.
  bool tied = false;
  /// The edges by which it is, where the job names them; else whatever stands beside it tells.
  std::vector<Joint> tied_edges;
  /// The compass direction in which placing proceeds, degrees clockwise from north; a walkway is
  /// then placed along its line from the end further back. If absent, a walkway is placed from its
  /// first point, and an outline along the longer side of the smallest box around it, starting at
  /// the end nearer its first point.
  std::optional<double> placed_toward_deg;
  /// Names of the zones that are placed before this one, wherever they are listed.
  std::vector<std::string> after;
  /// Names of the zones that the crew walks over to work here; empty if it comes from beside.
  std::vector<std::string> reached_over;
  /// When placing begins here, if fixed by hand; else it follows the previous zone.
  std::optional<UtcTime> placed_at;
  /// Replaces the mix's admixtures in this zone; an empty list means none.
  std::optional<std::vector<Admixture>> admixtures;
  /// Drawn by the user; if absent the program proposes them.
  std::optional<std::vector<Joint>> joints;
  SourcePosition where;
};

/// Things that cast shade.
enum class ObstacleKind { wall, tree };

/// A wall or a tree on the site plan.
struct Obstacle {
  std::string name;
  ObstacleKind kind = ObstacleKind::wall;
  /// A wall stands on the segment from -> to; a tree is a circle around `from`.
  Point from;
  Point to;
  double radius_m = 0.0;
  double height_m = 0.0;
  /// Fraction of the direct light that passes through, 0 to 1.
  double light_through = 0.0;
  /// Share of the sunlight that it throws back, 0 to 1.
  double albedo = 0.3;

  friend bool operator==(const Obstacle&, const Obstacle&) = default;
};

}  // namespace slabtide
