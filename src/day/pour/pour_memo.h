#pragma once

#include <deque>
#include <map>
#include <mutex>
#include <optional>
#include <tuple>
#include <utility>
#include <vector>

#include "slabtide/core/geometry.h"
#include "slabtide/job/model/zone.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"
#include "weather/site/site_light.h"

namespace slabtide {

/// A bare base that concrete is placed on.
struct BarePlace {
  Base base;
  bool shaded = false;
  Point at;
};

/// The ground under concrete as bare bases leave it, under one weather. Several threads may ask.
class KeptGrounds {
 public:
  KeptGrounds(SiteWeather weather, double ground_c)
      : weather_(std::move(weather)), ground_c_(ground_c) {}

  bool are_of(const SiteWeather& weather, double ground_c) const {
    return ground_c == ground_c_ && weather == weather_;
  }
  std::optional<std::vector<GroundPoint>> at(const BarePlace& place, double placed_s) const;
  void keep(const BarePlace& place, double placed_s, const std::vector<GroundPoint>& ground);

 private:
  using Key = std::tuple<BaseKind, BaseKept, double, bool, bool, double, double, double>;

  static Key key_of(const BarePlace& place, double placed_s);

  SiteWeather weather_;
  double ground_c_;
  mutable std::mutex mutex_;
  std::map<Key, std::vector<GroundPoint>> grounds_;
};

/// What pours of one site have in common, kept from run to run: a comparison asks dozens of times
/// for the same sun, sky and ground. Several threads may ask.
class PourMemo {
 public:
  /// `SiteLight::Keep::all` keeps grounds too; it is for runs that mostly begin at one time.
  PourMemo(std::vector<Obstacle> obstacles, SiteLight::Keep keep)
      : light(std::move(obstacles), keep), keep_(keep) {}

  /// Null where none are kept. Stay valid as long as this does.
  KeptGrounds* grounds(const SiteWeather& weather, double ground_c);

  SiteLight light;

 private:
  SiteLight::Keep keep_;
  std::mutex mutex_;
  std::deque<KeptGrounds> grounds_;
};

}  // namespace slabtide
