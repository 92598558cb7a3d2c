#include "site_light.h"

#include <algorithm>
#include <cstddef>

namespace slabtide {

namespace {

/// What the sides of obstacles throw onto level ground, as a share of the beam on the horizontal:
/// sun on an upright plane, once, even to all sides.
double thrown_back(const std::vector<Surroundings::SeenSide>& sides, const SunDirection& sun) {
  if (sides.empty() || !sun.up) return 0.0;
  double sum = 0.0;
  for (const Surroundings::SeenSide& side : sides) {
    const double toward_sun = sun.toward.x_m * side.normal.x_m + sun.toward.y_m * side.normal.y_m;
    sum += side.fraction * side.albedo * std::max(0.0, toward_sun);
  }
  return sum / sun.slope;
}

}  // namespace

SunPath::SunPath(const SiteWeather& weather) : grid(weather.grid) {
  suns.reserve(grid.count);
  for (std::size_t i = 0; i < grid.count; ++i)
    suns.emplace_back(weather.sun_azimuth_deg[i], weather.sun_elevation_deg[i]);
}

// Two threads that look at once see the same, so that nothing is locked while they look.

std::shared_ptr<const PlaceLight> SiteLight::at(Point place, const SunPath& path) {
  if (keep_ == Keep::sky) return std::make_shared<const PlaceLight>(look_from(place, path));
  const Instants instants{path.grid.start, path.grid.step_s, path.grid.count};
  const Place key{place.x_m, place.y_m};
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    auto& light = light_[instants];
    if (const auto found = light.find(key); found != light.end()) return found->second;
  }
  auto light = std::make_shared<const PlaceLight>(look_from(place, path));
  const std::lock_guard<std::mutex> lock(mutex_);
  return light_[instants].try_emplace(key, std::move(light)).first->second;
}

PlaceLight SiteLight::look_from(Point place, const SunPath& path) {
  const Surroundings surroundings(place, obstacles_);
  const Surroundings::SkySeen& sky = sky_from(place, surroundings);
  PlaceLight light{sky.view, {}, {}};
  light.sunlit_fraction.reserve(path.suns.size());
  light.thrown_back.reserve(path.suns.size());
  for (const SunDirection& sun : path.suns) {
    light.sunlit_fraction.push_back(surroundings.sunlit_fraction(sun));
    light.thrown_back.push_back(thrown_back(sky.sides, sun));
  }
  return light;
}

const Surroundings::SkySeen& SiteLight::sky_from(Point place, const Surroundings& surroundings) {
  const Place key{place.x_m, place.y_m};
  {
    const std::lock_guard<std::mutex> lock(mutex_);
    if (const auto found = sky_.find(key); found != sky_.end()) return found->second;
  }
  auto seen = surroundings.look_round();
  const std::lock_guard<std::mutex> lock(mutex_);
  return sky_.try_emplace(key, std::move(seen)).first->second;
}

}  // namespace slabtide
