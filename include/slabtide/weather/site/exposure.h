#pragma once

#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

struct PlaceLight;

/// What one place on the site sees, with one entry per instant of the grid.
struct CellExposure {
  double sky_view = 1.0;  ///< share of the sky it sees, 0 to 1
  /// Shortwave that arrives: beam through the obstacles, its share of the sky light, and what walls
  /// throw back.
  std::vector<double> shortwave_w_m2;
  /// Fraction of the direct light that reaches it, 0 (shade) to 1; 0 if the sun is down.
  std::vector<double> sunlit_fraction;
};

/// A horizontal cell of the slab: beam x sunlit + diffuse x sky view + what walls throw back.
///
/// Idealises: sky light even over the sky; walls and trees throw the sun's light back once and
/// evenly, each lit on the side that is seen where the sun is before it, never in another's shade;
/// no light from the ground, no sky light by walls. Status: ours.
/// Error: std::invalid_argument as Surroundings.
CellExposure expose(Point at, const SiteWeather& weather, const std::vector<Obstacle>& obstacles);

/// The same from the light that the cell gets whatever the weather, on the weather's grid.
CellExposure expose(const PlaceLight& light, const SiteWeather& weather);

/// A vertical formed face at `at` that looks toward `facing_deg` (clockwise from north): beam on
/// the vertical plane, at most half the sky, nothing reflected from the ground (ours: forms and the
/// step below block it). Computed 1 cm in front of the face, so that a wall it stands against is
/// behind it.
/// Error: std::invalid_argument as Surroundings.
CellExposure expose_face(Point at, double facing_deg, const SiteWeather& weather,
                         const std::vector<Obstacle>& obstacles);

/// A place that no direct sun reaches, with the given sky view. Error: std::invalid_argument for a
/// sky view outside 0 to 1.
CellExposure expose_shaded(double sky_view, const SiteWeather& weather);

}  // namespace slabtide
