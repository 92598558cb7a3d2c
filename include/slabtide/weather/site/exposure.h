#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// What one place on the site sees, one entry an instant of the grid.
struct CellExposure {
  double sky_view = 1.0;  ///< share of the sky it sees, 0 to 1
  /// Shortwave that arrives: beam through the obstacles plus its share of the sky light.
  std::vector<double> shortwave_w_m2;
  /// Share of the direct light that reaches it, 0 (shade) to 1; 0 with the sun down.
  std::vector<double> sunlit_fraction;
};

/// A horizontal cell of the slab: beam x sunlit + diffuse x sky view. Idealises: sky light
/// even over the sky, walls that send back none.
/// Error: std::invalid_argument as Surroundings.
CellExposure expose(Point at, const SiteWeather& weather, const std::vector<Obstacle>& obstacles);

/// A vertical formed face that looks toward `facing_deg` (clockwise from north), standing
/// at `at`: beam on the vertical plane, half the sky at most, nothing from the ground (ours:
/// forms and the step below keep it off). Seen from 1 cm in front, so that a wall it stands
/// against is behind it.
/// Error: std::invalid_argument as Surroundings.
CellExposure expose_face(Point at, double facing_deg, const SiteWeather& weather,
                         const std::vector<Obstacle>& obstacles);

/// A place that no direct sun reaches, under the given share of the sky.
/// Error: std::invalid_argument for a share outside 0 to 1.
CellExposure expose_shaded(double sky_view, const SiteWeather& weather);

}  // namespace slabtide
