#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "slabtide/core/civil_time.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/mix.h"

// What the contractor describes: the site, the pour, the weather, the mix and the parts of
// the slab. Everything is SI with °C; `read_job` converts and refuses what cannot be.

namespace slabtide {

enum class UnitSystem { us, si };

enum class WindSetting { open_lot, yard, sheltered_court };

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
};

enum class Hauling { chute, motor_buggy, wheelbarrow };
enum class SawKind { early_entry, wet };
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
  std::vector<std::string> zone_order;
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
  double wind_10m_m_s = 0.0;          ///< the day's mean at 10 m
  CloudShares cloud;                  ///< 0 to 1
};

struct ForecastFile {
  std::string path;  ///< as written; relative to the job file's folder
  SourcePosition where;
};

using WeatherChoice = std::variant<TypedWeather, ForecastFile>;

enum class BaseKind { gravel, soil, sand, insulation };

struct Base {
  BaseKind kind = BaseKind::gravel;
  double depth_m = 0.1;
};

enum class Finish { stamp, texture_roll, broom, float_finish, trowel };

/// A strip along the outline with a finish of its own.
struct Border {
  double width_m = 0.0;
  Finish finish = Finish::broom;
};

/// A formed vertical face: a step's riser or a slab's exposed edge that is finished.
struct FormedFace {
  double length_m = 0.0;
  double height_m = 0.0;
  /// The compass direction the face looks toward, degrees clockwise from north; absent
  /// where the user does not say: then the form is taken to be in the shade.
  std::optional<double> facing_deg;
  /// Where along the plan it stands; the centre of the zone where not given.
  std::optional<Point> at;
};

enum class Colour { grey, white, red_or_tan, brown_or_charcoal };

/// A joint drawn by the user: tooled or sawn along this line.
struct Joint {
  Point from;
  Point to;
};

/// A walk: its centre line and width.
struct WalkPath {
  std::vector<Point> line;
  double width_m = 0.0;
};

/// An area placed as one.
struct Zone {
  std::string name;
  Outline outline;               ///< from the path where that was given
  std::optional<WalkPath> path;  ///< present for a walk
  double thickness_m = 0.0;
  Base base;
  Finish finish = Finish::broom;
  std::optional<Border> border;
  std::vector<FormedFace> faces;
  Colour colour = Colour::grey;
  std::optional<double> absorptance;  ///< measured; beats the colour
  /// No direct sun all day: under a roof, in a narrow court. Says more than obstacles can.
  bool shaded = false;
  /// Cast against or dowelled to a structure.
  bool tied = false;
  /// The compass direction placing works toward, degrees clockwise from north; a walk is
  /// then placed along its line from the end that lies back. Absent: a walk is placed from
  /// its first point; an outline along its longer side (of the smallest box around it),
  /// starting at the end where its first point lies.
  std::optional<double> placed_toward_deg;
  /// Placing begins here when fixed by hand; else it follows the zone before.
  std::optional<UtcTime> placed_at;
  /// Replaces the mix's admixtures for this zone; an empty list means none.
  std::optional<std::vector<Admixture>> admixtures;
  /// Drawn by the user; absent means the program proposes them.
  std::optional<std::vector<Joint>> joints;
  SourcePosition where;
};

enum class ObstacleKind { wall, tree };

struct Obstacle {
  std::string name;
  ObstacleKind kind = ObstacleKind::wall;
  /// A wall stands on the segment from -> to; a tree is a circle about `from`.
  Point from;
  Point to;
  double radius_m = 0.0;
  double height_m = 0.0;
  /// Share of the direct light it lets through, 0 to 1.
  double light_through = 0.0;
};

/// Admixtures for one load only, such as retarder in the last.
struct LoadNote {
  int number = 1;  ///< the loads count from 1
  std::vector<Admixture> admixtures;
};

/// What is asked of the plant.
struct Order {
  double allowance_share = 0.07;            ///< over the neat volume
  double low_base_m = 0.00635;              ///< what a base this low would add is told (1/4 in)
  double load_size_m3 = 7.646;              ///< 10 yd3
  double short_load_m3 = 3.058;             ///< 4 yd3: under it the plant charges
  double discharge_limit_min = 90.0;        ///< batching to empty
  std::optional<double> truck_spacing_min;  ///< arrivals; else as fast as they unload
  std::vector<LoadNote> loads;
};

/// Who finishes.
struct Crew {
  int finishers = 4;
  double arrive_before_min = 60.0;  ///< on site before the first work: forms, base, tools
};

/// A change the contractor wants compared with the job as it stands. What is absent stays.
struct OptionNote {
  std::string name;
  std::optional<double> start_shift_min;
  std::optional<int> finishers;
  std::optional<std::vector<Admixture>> admixtures;  ///< in every load
  /// With `admixtures`: only in this many last loads.
  std::optional<int> last_loads;
  std::vector<std::string> admixture_zones;  ///< with `admixtures`: only in these zones
  std::vector<std::string> zone_order;
  std::vector<std::string> shaded_zones;
  std::optional<double> wind_ratio;
  std::vector<SawKind> saws;
};

struct Job {
  std::string name;
  UnitSystem units = UnitSystem::us;
  Site site;
  Pour pour;
  WeatherChoice weather;
  Mix mix;
  std::vector<Zone> zones;
  std::vector<Obstacle> obstacles;
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
