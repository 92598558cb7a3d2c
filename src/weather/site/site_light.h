#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <tuple>
#include <utility>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/zone.h"
#include "slabtide/weather/site/site_weather.h"
#include "weather/sky/shade.h"

namespace slabtide {

/// What level ground at one place gets of sun and sky at the instants of a grid, whatever the
/// weather.
struct PlaceLight {
  double sky_view = 1.0;
  std::vector<double> sunlit_fraction;
  /// What walls and trees throw onto it, over the beam on the horizontal.
  std::vector<double> thrown_back;
};

/// The sun at the instants of a grid.
struct SunPath {
  explicit SunPath(const SiteWeather& weather);

  TimeGrid grid;
  std::vector<SunDirection> suns;  ///< one an instant
};

/// The light of a site's places, looked at once for every run of the site that asks. Several
/// threads may ask.
class SiteLight {
 public:
  enum class Keep {
    sky,  ///< what is the same all day
    all   ///< also the sun through each grid: some 10 kB a place and grid
  };
  SiteLight(std::vector<Obstacle> obstacles, Keep keep)
      : obstacles_(std::move(obstacles)), keep_(keep) {}

  const std::vector<Obstacle>& obstacles() const { return obstacles_; }

  /// Error: std::invalid_argument as Surroundings.
  std::shared_ptr<const PlaceLight> at(Point place, const SunPath& path);

 private:
  using Instants = std::tuple<UtcTime, double, std::size_t>;
  using Place = std::pair<double, double>;

  PlaceLight look_from(Point place, const SunPath& path);
  /// Stays valid as long as this does.
  const Surroundings::SkySeen& sky_from(Point place, const Surroundings& surroundings);

  std::vector<Obstacle> obstacles_;
  Keep keep_;
  std::mutex mutex_;
  std::map<Place, Surroundings::SkySeen> sky_;
  std::map<Instants, std::map<Place, std::shared_ptr<const PlaceLight>>> light_;
};

}  // namespace slabtide
