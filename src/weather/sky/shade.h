#pragma once

#include <optional>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// The obstacles as one place on the flat site plan sees them.
///
/// Idealises: walls as upright sheets without thickness, trees as upright cylinders, the
/// place at ground level. A place under a tree sees everything through it. On a wall (nearer
/// than 1 mm) it cannot be told which side is meant: the mean of both is taken.
/// Source: plane geometry; status: ours.
class Surroundings {
 public:
  /// Error: std::invalid_argument for a place or an obstacle that is not finite, a negative
  /// height or radius, or a share of light outside 0 to 1.
  Surroundings(Point at, const std::vector<Obstacle>& obstacles);

  /// Share of the direct sun that reaches the place: the product of what the obstacles in
  /// the sun's direction let through; 0 with the sun down.
  double sunlit_fraction(double sun_azimuth_deg, double sun_elevation_deg) const;

  /// Share of the sky that level ground sees, weighted by the cosine to the zenith:
  ///
  ///     F = 1/(2 pi) integral of cos²(w(phi)) over phi,
  ///
  /// w the height of the obstacle in direction phi, by 360 directions. Where an obstacle
  /// lets light through, that share of the band behind it counts too (ours).
  double sky_view() const;

  /// The same for an upright face that looks toward `facing_deg`: at most 0.5.
  ///
  ///     F = 1/pi integral of cos(phi) (pi/4 - w/2 - sin(2w)/4) over the half circle in front
  double sky_view_of_face(double facing_deg) const;

 private:
  /// An obstacle relative to the place.
  struct Seen {
    ObstacleKind kind;
    Point from;  ///< end of the wall, or centre of the tree
    Point span;  ///< from one end of the wall to the other
    double radius_m;
    double height_m;
    double light_through;
    bool touching;  ///< the place is on the wall or under the tree
  };
  /// What stands in one direction: the tangent of its height, and what it lets through.
  struct Hit {
    double slope;
    double light_through;
  };
  /// Share of a direction's light from above an elevation, given as its tangent; 1 at 0.
  using ShareAbove = double (*)(double slope);

  static Seen seen_from(Point at, const Obstacle& obstacle);
  static std::optional<double> distance_m(const Seen& obstacle, Point direction);
  void collect(Point direction, std::vector<Hit>& hits) const;
  static double open_fraction(std::vector<Hit>& hits, ShareAbove above);

  std::vector<Seen> seen_;
};

}  // namespace slabtide
