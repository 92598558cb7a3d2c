#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/practice/compare_rules.h"
#include "slabtide/day/practice/crew_practice.h"
#include "slabtide/day/practice/observation_rules.h"
#include "slabtide/day/practice/operation.h"
#include "slabtide/day/practice/spread_rules.h"

// The trade's thresholds and rates, from data/practice.toml: each with its source there,
// each adjustable by the user. This only gives them names.

namespace slabtide {

/// Penetration resistance (ASTM C403, psi) at the working depth within which an operation
/// can be done.
struct ResistanceWindow {
  double opens_psi = 0.0;
  double closes_psi = 0.0;
  bool needs_sheen_gone = false;
};

/// When a zone is said to be ready, and its parts to be apart.
struct CellRules {
  double first_fraction = 0.0;     ///< of the area: a window opens with it
  double all_over_fraction = 0.0;  ///< of the area: open all over
  double part_differs_min = 0.0;   ///< parts further apart are reported apart
};

/// When bleed water shows, and when a dry look misleads.
struct SheenRules {
  double bleed_water_gone_kg_m2 = 0.0;     ///< free water under this shows no sheen
  double grace_min = 0.0;                  ///< after placing, before a dry look counts
  double early_bleed_fraction = 0.0;       ///< bleed still to come that makes a dry top misleading
  double early_evaporation_kg_m2_h = 0.0;  ///< drying slower than this leaves no crust
};

/// Drying worth a word.
struct EvaporationFlags {
  double caution_kg_m2_h = 0.0;
  double precautions_kg_m2_h = 0.0;
  double hardly_bleeds_factor = 0.0;  ///< on both, for mixes that hardly bleed
};

/// When a top has dried over a soft body.
struct CrustRules {
  double ratio = 0.0;           ///< resistance at the top over that deep down
  double body_under_psi = 0.0;  ///< counts while the body is softer than this
  double top_over_psi = 0.0;    ///< and the top stiffer than this
};

/// When a saw can start and must be done, how deep and how fast it goes.
struct SawRules {
  double early_entry_opens_psi = 0.0;
  double wet_opens_soft_psi = 0.0;
  double wet_opens_medium_psi = 0.0;
  double wet_opens_hard_psi = 0.0;
  double wet_opens_quartzite_psi = 0.0;
  double cut_by_ratio = 0.0;  ///< stress over tensile strength
  double late_ratio = 0.0;
  double surface_fall_k = 0.0;  ///< under its peak: the trade's limit
  double wet_depth_fraction = 0.0;
  double wet_min_depth_m = 0.0;
  double early_entry_depth_m = 0.0;
  double speed_m_h = 0.0;   ///< two hands on green concrete
  double set_up_min = 0.0;  ///< for each cut: line, guide, moving there
};

/// How far apart joints may be.
struct JointSpacing {
  double shrinks_max_thicknesses = 0.0;  ///< sandstone
  double usual_thicknesses = 0.0;        ///< gravel, basalt, unknown
  double shrinks_min_thicknesses = 0.0;  ///< limestone, granite, quartzite
  double max_m = 0.0;                    ///< whatever the thickness
  double max_aspect = 0.0;               ///< longer side over shorter
  double walkway_aspect = 0.0;           ///< of a walk's panels, preferred
};

/// How fast concrete is placed, by the way it is hauled.
struct PlacingRates {
  double chute_worker_h_per_m3 = 0.0;
  double buggy_added_worker_h_per_m3 = 0.0;        ///< at the base haul
  double wheelbarrow_added_worker_h_per_m3 = 0.0;  ///< at the base haul
  double base_haul_m = 0.0;
};

/// What comes after the finishing: set, walking on, washing, sealing.
struct SetRules {
  double initial_set_psi = 0.0;
  double final_set_psi = 0.0;
  double foot_traffic_strength_psi = 0.0;
  double wash_after_set_age_h = 0.0;
  double dry_after_wash_h = 0.0;  ///< before the sealer
  double seal_surface_min_c = 0.0;
  double seal_surface_max_c = 0.0;
};

/// Weather and temperatures that a caution is given for.
struct WeatherLimits {
  double hot_concrete_c = 0.0;
  double hot_air_c = 0.0;
  double cold_air_c = 0.0;
  double cold_concrete_c = 0.0;
  double protect_until_psi = 0.0;
  double rain_mm_h = 0.0;    ///< that marks a fresh surface
  double rain_chance = 0.0;  ///< from which it is worth a word
  double short_window_min = 0.0;
  double dry_humidity_fraction = 0.0;
  double crust_wind_m_s = 0.0;  ///< at the slab
  double forecast_old_h = 0.0;
};

/// Share of the sunlight a surface takes up.
struct Absorptances {
  double grey = 0.0;
  double white = 0.0;
  double red_or_tan = 0.0;
  double brown_or_charcoal = 0.0;
  double form = 0.0;
};

/// All of it; `windows` by Operation.
struct Practice {
  std::array<ResistanceWindow, operation_count> windows{};  ///< of the plastic operations
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
  CompareRules compare;
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

/// The defaults the program carries inside. Error: std::logic_error if they do not read
/// or leave something out (a broken build).
Practice default_practice();

/// `base` with what `toml` says in place of it. Unknown keys, wrong types and values out
/// of range are errors with their place.
Parsed<Practice> read_practice(std::string_view toml, const Practice& base);

/// Error: std::invalid_argument where a number is outside what a practice file may say, not finite
/// or not in order with another. The message begins with its path, "operation.stamp.opens_psi".
void validate(const Practice& practice);

}  // namespace slabtide
