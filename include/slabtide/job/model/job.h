#pragma once

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "slabtide/core/clock.h"
#include "slabtide/core/diagnostic.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/model/mix.h"
#include "slabtide/job/model/order_notes.h"
#include "slabtide/job/model/prices.h"
#include "slabtide/job/model/zone.h"

// What the contractor describes: the site, the pour, the weather, the mix and the parts of the
// slab. Everything is SI with °C; `read_job` converts, and refuses impossible values.

namespace slabtide {

/// The units of a job file and of the output for it.
enum class UnitSystem { us, si };

/// How open the site is to the wind.
enum class WindSetting { open_lot, yard, sheltered_court };

/// How the air at a site differed from its forecasts on earlier pours.
struct LearnedAir {
  double air_k = 0.0;   ///< expected on the next pour
  double mean_k = 0.0;  ///< mean over those pours
  int pours = 0;
};

/// Location and surroundings of the slab.
struct Site {
  std::string name;
  double latitude_deg = 0.0;   ///< north positive
  double longitude_deg = 0.0;  ///< east positive
  double elevation_m = 0.0;
  TimeZone time_zone;
  WindSetting wind_setting = WindSetting::yard;
  /// Wind at the slab over the forecast's 10 m wind, measured on site; overrides the setting.
  std::optional<double> measured_wind_ratio;
  std::optional<double> ground_c;
  std::optional<LearnedAir> learned_air;
};

/// How concrete gets from the truck into the forms.
enum class Hauling { chute, motor_buggy, wheelbarrow, pump };

/// Something laid on the fresh slab, from and to the given instants.
struct Cover {
  CuringKind kind = CuringKind::blanket;
  /// Thermal resistance of a blanket; 0 for plastic, which has almost none.
  double resistance_m2k_w = 0.0;
  UtcTime from;
  UtcTime to;
  /// The zones it lies on; empty means all of them.
  std::vector<std::string> zones;
};

/// When and how the concrete is placed.
struct Pour {
  Date date;
  UtcTime start;  ///< the first concrete leaves the chute
  /// Batching to placing.
  double transit_min = 35.0;
  Hauling hauling = Hauling::chute;
  /// One way, for buggies and wheelbarrows.
  std::optional<double> haul_distance_m;
  /// Overrides the rate that the hauling method gives.
  std::optional<double> placing_rate_m3_h;
  /// Workers placing concrete, for the rate; separate from the finishing crew.
  int placing_crew = 4;
  /// Zone names in placing order; includes every zone once the job has been read.
  std::vector<std::string> placing_sequence;
  std::vector<SawKind> saws;
  /// What is applied after the last finishing step; `film` is a sprayed curing compound.
  CuringKind curing = CuringKind::none;
  /// Of the blankets that cure; absent: the least that is sold (pour_run.cpp).
  std::optional<double> curing_blanket_m2k_w;
  /// An evaporation film is sprayed on the fresh concrete, after each pass again, until it sets.
  bool evaporation_film = false;
  std::vector<Cover> covers;
};

/// What keeps stamps from sticking: a powder that is washed off later, or a liquid that leaves
/// nothing to wash.
enum class ReleaseKind { powder, liquid };
/// What the finished slab gets: a sealer when it is old and dry enough, a cure-and-seal (the curing
/// of the pour) the same day, or once what is washed is washed and dry, or nothing.
enum class SealerKind { sealer, cure_and_seal, none };

/// The work of the days after. A label's own waits replace the practice's (`with_labels`).
struct FinishWork {
  ReleaseKind release = ReleaseKind::powder;
  SealerKind sealer = SealerKind::sealer;
  std::optional<double> wash_after_h;       ///< from placing to washing
  std::optional<double> wash_off_after_h;   ///< from placing to the wash-off of exposed aggregate
  std::optional<double> wash_off_before_h;  ///< likewise, at the latest
  std::optional<double> seal_after_days;    ///< from placing to sealing
};

/// The parts of the day for which cloud cover can be given, by local clock: night 21-6, morning
/// 6-12, afternoon 12-17, evening 17-21.
struct CloudShares {
  double night = 0.0;
  double morning = 0.0;
  double afternoon = 0.0;
  double evening = 0.0;
};

/// The weather of a day typed in as a few figures.
struct TypedWeather {
  double high_c = 0.0;
  double low_c = 0.0;                 ///< of the morning of the pour
  std::optional<double> next_high_c;  ///< of the next day; else the same as on the pour's day
  std::optional<double> next_low_c;   ///< of the night after the pour; else the same as before it
  std::optional<double> dew_point_c;  ///< else from the humidity, else the low temperature
  /// Relative humidity at the time of the high, 0 to 1; never given together with a dew point.
  std::optional<double> humidity_at_high;
  double wind_10m_m_s = 0.0;  ///< the day's mean at 10 m
  CloudShares cloud;          ///< 0 to 1
  bool wind_is_assumed = false;
  bool cloud_is_assumed = false;
};

/// A forecast kept in a file.
struct ForecastFile {
  std::string path;  ///< as written; relative to the job file's folder
  SourcePosition where;
};

/// Typed figures or a forecast file.
using WeatherChoice = std::variant<TypedWeather, ForecastFile>;

/// Everything that a plan is made from.
struct Job {
  std::string name;
  UnitSystem units = UnitSystem::us;
  std::optional<HourCount> hours;  ///< how times are shown (`clock_of`); else as the units have it
  Site site;
  Pour pour;
  WeatherChoice weather;
  Mix mix;
  std::vector<Zone> zones;
  std::vector<Obstacle> obstacles;
  /// Where the origin of all places lies on the user's drawing (`canonical`). Everything shown to
  /// the user is measured on the drawing.
  Point drawing_origin;
  Order order;
  Crew crew;
  FinishWork finish_work;
  std::optional<Prices> prices;  ///< absent: nothing is told of what the pour costs
  std::vector<OptionNote> options;
  /// The job file's `[practice]` table, kept as TOML text for the practice reader, with the line it
  /// starts on; empty if absent. Lines and columns in the text match those of the job file, so that
  /// findings can be shown there.
  std::string practice_overrides_toml;
  SourcePosition practice_where;
};

}  // namespace slabtide
