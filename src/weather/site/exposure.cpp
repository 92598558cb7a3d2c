#include "slabtide/weather/site/exposure.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "slabtide/core/units.h"
#include "weather/sky/shade.h"

namespace slabtide {
namespace {

constexpr double in_front_m = 0.01;

/// Beam on a vertical plane over beam on the horizontal; 0 if the sun is behind the plane.
double face_beam_factor(double facing_deg, double azimuth_deg, double elevation_deg) {
  const double toward_sun = std::cos((azimuth_deg - facing_deg) * radians_per_degree);
  if (!(elevation_deg > 0.0 && toward_sun > 0.0)) return 0.0;
  return toward_sun / std::tan(elevation_deg * radians_per_degree);
}

Point in_front_of(Point at, double facing_deg) {
  const double facing = facing_deg * radians_per_degree;
  return {at.x_m + in_front_m * std::sin(facing), at.y_m + in_front_m * std::cos(facing)};
}

/// What the sides of obstacles throw onto level ground, as a share of the beam on the horizontal:
/// sun on an upright plane, once, even to all sides.
double thrown_back(const std::vector<Surroundings::SeenSide>& sides, double azimuth_deg,
                   double elevation_deg) {
  if (sides.empty() || !(elevation_deg > 0.0)) return 0.0;
  const double azimuth = azimuth_deg * radians_per_degree;
  const Point sun{std::sin(azimuth), std::cos(azimuth)};
  double sum = 0.0;
  for (const Surroundings::SeenSide& side : sides) {
    const double toward_sun = sun.x_m * side.normal.x_m + sun.y_m * side.normal.y_m;
    sum += side.fraction * side.albedo * std::max(0.0, toward_sun);
  }
  return sum / std::tan(elevation_deg * radians_per_degree);
}

void make_room(CellExposure& exposure, const TimeGrid& grid) {
  exposure.sunlit_fraction.reserve(grid.count);
  exposure.shortwave_w_m2.reserve(grid.count);
}

}  // namespace

CellExposure expose(Point at, const SiteWeather& weather, const std::vector<Obstacle>& obstacles) {
  const Surroundings surroundings(at, obstacles);
  CellExposure cell;
  const Surroundings::SkySeen sky = surroundings.look_round();
  cell.sky_view = sky.view;
  make_room(cell, weather.grid);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double azimuth_deg = weather.sun_azimuth_deg[i];
    const double elevation_deg = weather.sun_elevation_deg[i];
    const double beam_w_m2 = weather.beam_horizontal_w_m2[i];
    const double sunlit = surroundings.sunlit_fraction(azimuth_deg, elevation_deg);
    const double back = beam_w_m2 > 0.0 ? thrown_back(sky.sides, azimuth_deg, elevation_deg) : 0.0;
    cell.sunlit_fraction.push_back(sunlit);
    cell.shortwave_w_m2.push_back(beam_w_m2 * (sunlit + back) +
                                  weather.diffuse_w_m2[i] * cell.sky_view);
  }
  return cell;
}

CellExposure expose_face(Point at, double facing_deg, const SiteWeather& weather,
                         const std::vector<Obstacle>& obstacles) {
  const Surroundings surroundings(in_front_of(at, facing_deg), obstacles);
  CellExposure face;
  face.sky_view = surroundings.sky_view_of_face(facing_deg);
  make_room(face, weather.grid);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double azimuth_deg = weather.sun_azimuth_deg[i];
    const double elevation_deg = weather.sun_elevation_deg[i];
    const double factor = face_beam_factor(facing_deg, azimuth_deg, elevation_deg);
    const double sunlit =
        factor > 0.0 ? surroundings.sunlit_fraction(azimuth_deg, elevation_deg) : 0.0;
    face.sunlit_fraction.push_back(sunlit);
    face.shortwave_w_m2.push_back(weather.beam_horizontal_w_m2[i] * factor * sunlit +
                                  weather.diffuse_w_m2[i] * face.sky_view);
  }
  return face;
}

CellExposure expose_shaded(double sky_view, const SiteWeather& weather) {
  if (!(sky_view >= 0.0 && sky_view <= 1.0))
    throw std::invalid_argument("exposure: the share of sky is not within 0 to 1");
  CellExposure place;
  place.sky_view = sky_view;
  place.sunlit_fraction.assign(weather.grid.count, 0.0);
  for (std::size_t i = 0; i < weather.grid.count; ++i)
    place.shortwave_w_m2.push_back(weather.diffuse_w_m2[i] * sky_view);
  return place;
}

}  // namespace slabtide
