#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/practice/compare_rules.h"
#include "slabtide/day/practice/crew_practice.h"
#include "slabtide/day/practice/days_rules.h"
#include "slabtide/day/practice/observation_rules.h"
#include "slabtide/day/practice/operation.h"
#include "slabtide/day/practice/shelter_rules.h"
#include "slabtide/day/practice/spread_rules.h"

// The trade's thresholds and rates, from data/practice.toml, where each has its source; the user
// can change each of them. This header only names them.

namespace slabtide {

struct FinishWork;

/// Penetration resistance (ASTM C403, psi) at the working depth between which an operation can be
/// done.
struct ResistanceWindow {
  double opens_psi = 0.0;
  double closes_psi = 0.0;
  bool needs_sheen_gone = false;
  /// It closes nothing in: what little water still rises gets out through it.
  bool leaves_top_open = false;
};

/// When a zone counts as ready, and when its parts are reported separately.
struct CellRules {
  double first_fraction = 0.0;     ///< of the area that is ready when a window opens
  double all_over_fraction = 0.0;  ///< of the area that is ready when it is open all over
  double part_differs_min = 0.0;   ///< parts that differ by more are reported separately
};

/// When bleed water is visible, and when a dry surface is misleading.
struct SheenRules {
  double bleed_water_gone_kg_m2 = 0.0;     ///< less free water than this shows no sheen
  double grace_min = 0.0;                  ///< after placing, before a dry surface counts
  double early_bleed_fraction = 0.0;       ///< bleed water still to come that makes a dry surface
                                           ///< misleading
  double early_evaporation_kg_m2_h = 0.0;  ///< slower drying leaves no crust
};

/// Evaporation rates worth mentioning.
struct EvaporationFlags {
  double caution_kg_m2_h = 0.0;
  double precautions_kg_m2_h = 0.0;
  double hardly_bleeds_factor = 0.0;  ///< on both rates, for mixes that hardly bleed
};

/// When a crust has dried over soft concrete.
struct CrustRules {
  double ratio = 0.0;           ///< resistance at the top over that deeper down
  double body_under_psi = 0.0;  ///< counts while the concrete below is softer than this
  double top_over_psi = 0.0;    ///< and the top is stiffer than this
};

/// When sawing can start and must be finished, how deep and how fast it goes.
struct SawRules {
  double early_entry_opens_psi = 0.0;
  double wet_opens_soft_psi = 0.0;
  double wet_opens_medium_psi = 0.0;
  double wet_opens_hard_psi = 0.0;
  double wet_opens_quartzite_psi = 0.0;
  double cut_by_ratio = 0.0;  ///< stress over tensile strength
  double late_ratio = 0.0;
  double surface_fall_k = 0.0;  ///< below its peak: the trade's limit
  double wet_depth_fraction = 0.0;
  double wet_min_depth_m = 0.0;
  double early_entry_depth_m = 0.0;
  double speed_m_h = 0.0;   ///< two workers on green concrete
  double set_up_min = 0.0;  ///< for each cut: marking, guide, moving there
};

/// How far apart joints may be.
struct JointSpacing {
  double shrinks_max_thicknesses = 0.0;  ///< sandstone
  double usual_thicknesses = 0.0;        ///< gravel, basalt, unknown
  double shrinks_min_thicknesses = 0.0;  ///< limestone, granite, quartzite
  double max_m = 0.0;                    ///< maximum, whatever the thickness
  double max_aspect = 0.0;               ///< longer side over shorter
  double walkway_aspect = 0.0;           ///< for the panels of a walkway, as a preference
};

/// How fast concrete is placed, by hauling method.
struct PlacingRates {
  double chute_worker_h_per_m3 = 0.0;
  double buggy_added_worker_h_per_m3 = 0.0;        ///< at the base haul distance
  double wheelbarrow_added_worker_h_per_m3 = 0.0;  ///< at the base haul distance
  double base_haul_m = 0.0;
  double pump_worker_h_per_m3 = 0.0;  ///< through the hose of a line pump, whatever its length
};

/// After the finishing: set, walking on it, washing, sealing.
struct SetRules {
  double foot_traffic_strength_psi = 0.0;
  double wash_after_set_age_h = 0.0;
  double wash_after_h = 0.0;       ///< from placing, however warm it was
  double wash_off_after_h = 0.0;   ///< from placing to the wash-off of exposed aggregate
  double wash_off_before_h = 0.0;  ///< later the retarder has lost its hold on the paste
  double dry_after_wash_h = 0.0;   ///< before sealing
  double seal_after_days = 0.0;    ///< from placing
  double seal_over_dew_point_k = 0.0;
  double seal_surface_min_c = 0.0;
  double seal_surface_max_c = 0.0;
};

/// Weather and temperatures for which a caution is given.
struct WeatherLimits {
  double hot_concrete_c = 0.0;
  double hot_air_c = 0.0;
  double cold_air_c = 0.0;
  double cold_concrete_c = 0.0;
  double protect_until_psi = 0.0;
  double rain_mm_h = 0.0;    ///< rate that marks a fresh surface
  double rain_chance = 0.0;  ///< from which rain is mentioned
  double short_window_min = 0.0;
  double dry_humidity_fraction = 0.0;
  double crust_wind_m_s = 0.0;  ///< at the slab
  double forecast_old_h = 0.0;
};

/// Fraction of sunlight that a surface absorbs.
struct Absorptances {
  double grey = 0.0;
  double white = 0.0;
  double red_or_tan = 0.0;
  double brown_or_charcoal = 0.0;
  double form = 0.0;
};

/// All rules; `windows` is indexed by Operation.
struct Practice {
  std::array<ResistanceWindow, operation_count> windows{};  ///< of the operations on plastic
                                                            ///< concrete
  CellRules cells;
  SheenRules sheen;
  EvaporationFlags evaporation;
  CrustRules crust;
  SawRules saw;
  JointSpacing joints;
  PlacingRates placing;
  SetRules set;
  WeatherLimits limits;
  Absorptances absorptance;
  ShelterRules shelter;
  CompareRules compare;
  DaysRules days;
  CrewPractice crew;
  SpreadRules spread;
  ObservationRules reading;

  ResistanceWindow& window(Operation operation) {
    return windows[static_cast<std::size_t>(operation)];
  }
  const ResistanceWindow& window(Operation operation) const {
    return windows[static_cast<std::size_t>(operation)];
  }
};

/// The defaults built into the program. Error: std::logic_error if they cannot be read or are
/// incomplete (a broken build).
Practice default_practice();

/// `base` with the values in `toml` replacing its own. Unknown keys, wrong types and values out of
/// range are errors with their position.
Parsed<Practice> read_practice(std::string_view toml, const Practice& base);

/// `practice` with the waits that the labels of the release agent and the sealer ask for.
Practice with_labels(Practice practice, const FinishWork& work);

/// Error: std::invalid_argument if a number is outside the range allowed in a practice file, is not
/// finite or is in the wrong order relative to another. The message begins with its path,
/// "operation.stamp.opens_psi".
void validate(const Practice& practice);

}  // namespace slabtide
