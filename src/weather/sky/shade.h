#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Where the sun stands, with what every place asks of it worked out once.
struct SunDirection {
  SunDirection(double sun_azimuth_deg, double sun_elevation_deg);

  double azimuth_deg;
  bool up;
  Point toward;  ///< level, of length 1
  double slope;  ///< the tangent of its elevation
};

/// The obstacles as seen from one place on the flat site plan.
///
/// Idealises: walls as vertical sheets without thickness, trees as vertical cylinders, the place at
/// ground level. A place under a tree sees everything through it. For a place on a wall (within 1
/// mm) the side is unknown, so the mean of both sides is used.
/// Source: plane geometry; status: ours.
class Surroundings {
 public:
  /// Error: std::invalid_argument for a place or an obstacle that is not finite, a negative
  /// height or radius, or a light fraction outside 0 to 1.
  Surroundings(Point at, const std::vector<Obstacle>& obstacles);

  /// Fraction of the direct sun that reaches the place: the product of the light that the obstacles
  /// in the sun's direction let through; 0 if the sun is down.
  double sunlit_fraction(const SunDirection& sun) const;

  /// What of an obstacle the level ground sees.
  struct SeenSide {
    double fraction;  ///< of the light from all round, weighted as in `sky_view`
    Point normal;     ///< level, of length 1, from what is seen toward the place
    double albedo;
  };
  /// All that level ground sees above it.
  struct SkySeen {
    /// Fraction of the sky, weighted by the cosine of the zenith angle:
    ///
    ///     F = 1/(2 pi) integral of cos²(w(phi)) over phi,
    ///
    /// with w the height of the obstacle in direction phi, for 360 directions. If an obstacle lets
    /// light through, that fraction of the band behind it counts too (ours).
    double view;
    /// The obstacles' sides toward the place, those that it sees nothing of left out. Of two in one
    /// direction the higher stands for both.
    std::vector<SeenSide> sides;
  };
  SkySeen look_round() const;
  double sky_view() const { return look_round().view; }
  std::vector<SeenSide> seen_sides() const { return look_round().sides; }

  /// The fraction of the sky seen by a vertical face that looks toward `facing_deg`: at most 0.5.
  ///
  ///     F = 1/pi integral of cos(phi) (pi/4 - w/2 - sin(2w)/4) over the half circle in front
  double sky_view_of_face(double facing_deg) const;

 private:
  /// An obstacle relative to the place.
  struct Seen {
    ObstacleKind kind;
    Point from;  ///< one end of the wall, or the centre of the tree
    Point span;  ///< from one end of the wall to the other
    double radius_m;
    double height_m;
    double light_through;
    double albedo;
    bool touching;  ///< the place is on the wall or under the tree
  };
  /// What is hit in one direction: the tangent of its height, and the light it lets through.
  struct Hit {
    std::size_t which;
    double slope;
    double light_through;
  };
  /// Fraction of a direction's light that comes from above an elevation, given as its tangent; 1 at
  /// 0.
  using ShareAbove = double (*)(double slope);

  /// A whole degree of the compass and those after it, round through north.
  struct Degrees {
    int first;
    int count;
  };

  static Seen seen_from(Point at, const Obstacle& obstacle);
  static std::optional<double> distance_m(const Seen& obstacle, Point direction);
  static Degrees degrees_of(const Seen& obstacle);
  template <class Use>
  static void each_of(const Degrees& degrees, Use use);
  void sort_by_degrees();
  std::span<const std::size_t> in_direction(double azimuth_deg) const;
  static Point normal_of(const Seen& obstacle);
  /// Of what the place does not stand on or under, the highest; of two as high the first.
  std::optional<Hit> highest_of(const std::vector<Hit>& hits) const;
  void collect(double azimuth_deg, Point direction, std::vector<Hit>& hits) const;
  static double open_fraction(std::vector<Hit>& hits, ShareAbove above);

  std::vector<Seen> seen_;
  /// Degree after degree the obstacles that may stand in it, in their order: a look in one
  /// direction need not ask those in all others. `first_in_degree_` has one more than there are
  /// degrees.
  std::vector<std::size_t> by_degree_;
  std::vector<std::size_t> first_in_degree_;
};

}  // namespace slabtide
