#include "slabtide/weather/site/exposure.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>

#include "site_light.h"
#include "slabtide/core/units.h"
#include "weather/sky/shade.h"

namespace slabtide {
namespace {

constexpr double in_front_m = 0.01;

/// Beam on a vertical plane over beam on the horizontal; 0 if the sun is behind the plane.
double face_beam_factor(double facing_deg, const SunDirection& sun) {
  const double toward_sun = std::cos((sun.azimuth_deg - facing_deg) * radians_per_degree);
  return sun.up && toward_sun > 0.0 ? toward_sun / sun.slope : 0.0;
}

Point in_front_of(Point at, double facing_deg) {
  const double facing = facing_deg * radians_per_degree;
  return {at.x_m + in_front_m * std::sin(facing), at.y_m + in_front_m * std::cos(facing)};
}

}  // namespace

CellExposure expose(const PlaceLight& light, const SiteWeather& weather) {
  CellExposure cell;
  cell.sky_view = light.sky_view;
  cell.sunlit_fraction = light.sunlit_fraction;
  cell.shortwave_w_m2.reserve(weather.grid.count);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double beam_w_m2 = weather.beam_horizontal_w_m2[i];
    const double back = beam_w_m2 > 0.0 ? light.thrown_back[i] : 0.0;
    cell.shortwave_w_m2.push_back(beam_w_m2 * (light.sunlit_fraction[i] + back) +
                                  weather.diffuse_w_m2[i] * cell.sky_view);
  }
  return cell;
}

CellExposure expose(Point at, const SiteWeather& weather, const std::vector<Obstacle>& obstacles) {
  return expose(*SiteLight(obstacles, SiteLight::Keep::sky).at(at, SunPath(weather)), weather);
}

CellExposure expose_face(Point at, double facing_deg, const SiteWeather& weather,
                         const std::vector<Obstacle>& obstacles) {
  const Surroundings surroundings(in_front_of(at, facing_deg), obstacles);
  CellExposure face;
  face.sky_view = surroundings.sky_view_of_face(facing_deg);
  face.sunlit_fraction.reserve(weather.grid.count);
  face.shortwave_w_m2.reserve(weather.grid.count);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const SunDirection sun(weather.sun_azimuth_deg[i], weather.sun_elevation_deg[i]);
    const double factor = face_beam_factor(facing_deg, sun);
    const double sunlit = factor > 0.0 ? surroundings.sunlit_fraction(sun) : 0.0;
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
