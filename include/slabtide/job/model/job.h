#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/mix.h"
#include "slabtide/job/model/order_notes.h"
#include "slabtide/job/model/zone.h"

// What the contractor describes: the site, the pour, the weather, the mix and the parts of
// the slab. Everything is SI with °C; `read_job` converts and refuses what cannot be.

namespace slabtide {

/// The units of a job file and of what is printed of it.
enum class UnitSystem { us, si };

/// How open the site is to the wind.
enum class WindSetting { open_lot, yard, sheltered_court };

/// What earlier pours have shown of a site's air over its forecasts.
struct LearnedAir {
  double air_k = 0.0;   ///< to be expected of the next
  double mean_k = 0.0;  ///< of those pours
  int pours = 0;
};

/// Where it is.
struct Site {
  std::string name;
  double latitude_deg = 0.0;   ///< north positive
  double longitude_deg = 0.0;  ///< east positive
  double elevation_m = 0.0;
  TimeZone time_zone;
  WindSetting wind_setting = WindSetting::yard;
  /// Wind at the slab over the forecast's 10 m wind, read on site; beats the setting.
  std::optional<double> measured_wind_ratio;
  std::optional<double> ground_c;
  std::optional<LearnedAir> learned_air;
};

/// How concrete gets from the truck into the forms.
enum class Hauling { chute, motor_buggy, wheelbarrow };
/// What keeps the slab moist or warm.
enum class CuringKind { none, film, plastic, blanket };

/// Something laid on the fresh slab. `from` and `to` are local times of the pour's days.
struct Cover {
  CuringKind kind = CuringKind::blanket;
  /// Thermal resistance; a blanket's. Plastic alone has next to none.
  double resistance_m2k_w = 0.0;
  UtcTime from;
  UtcTime to;
  /// The zones it lies on; empty means all.
  std::vector<std::string> zones;
};

/// When and how it is placed.
struct Pour {
  Date date;
  UtcTime start;  ///< the first concrete leaves the chute
  /// Batching to placing.
  double transit_min = 35.0;
  Hauling hauling = Hauling::chute;
  /// One way, for buggies and barrows.
  std::optional<double> haul_distance_m;
  /// Overrides what the hauling method gives.
  std::optional<double> placing_rate_m3_h;
  /// Hands that place, for the rate; the finishing crew is another matter.
  int placing_crew = 4;
  /// Names of zones, in the order they are placed. Complete once read.
  std::vector<std::string> placing_sequence;
  std::vector<SawKind> saws;
  /// What is put on after the last finishing; `film` is a sprayed curing compound.
  CuringKind curing = CuringKind::none;
  std::vector<Cover> covers;
};

/// The parts of the day a cloud share can be given for. Local clock:
/// night 21-6, morning 6-12, afternoon 12-17, evening 17-21.
struct CloudShares {
  double night = 0.0;
  double morning = 0.0;
  double afternoon = 0.0;
  double evening = 0.0;
};

/// A day typed as its high and low.
struct TypedWeather {
  double high_c = 0.0;
  double low_c = 0.0;                 ///< of the pour's morning
  std::optional<double> next_high_c;  ///< the day after; else the same
  std::optional<double> next_low_c;   ///< of the night after the pour; else the same
  std::optional<double> dew_point_c;  ///< else from the humidity, else the low
  /// Relative, 0 to 1, when the day is at its high; never beside a dew point.
  std::optional<double> humidity_at_high;
  double wind_10m_m_s = 0.0;  ///< the day's mean at 10 m
  CloudShares cloud;          ///< 0 to 1
};

/// A forecast kept in a file.
struct ForecastFile {
  std::string path;  ///< as written; relative to the job file's folder
  SourcePosition where;
};

/// The day typed by its figures, or a forecast.
using WeatherChoice = std::variant<TypedWeather, ForecastFile>;

/// Everything that a plan is made from.
struct Job {
  std::string name;
  UnitSystem units = UnitSystem::us;
  Site site;
  Pour pour;
  WeatherChoice weather;
  Mix mix;
  std::vector<Zone> zones;
  std::vector<Obstacle> obstacles;
  /// Where the origin of all places lies on the user's drawing (`canonical`). What is
  /// shown to the user is measured on the drawing.
  Point drawing_origin;
  Order order;
  Crew crew;
  std::vector<OptionNote> options;
  /// The job file's `[practice]` table, kept as TOML text for the practice reader, with
  /// the line it starts on; empty where there is none. Line and column of everything in the
  /// text are those of the job file, so that findings about it can be shown there.
  std::string practice_overrides_toml;
  SourcePosition practice_where;
};

}  // namespace slabtide
