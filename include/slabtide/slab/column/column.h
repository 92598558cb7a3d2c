#pragma once

#include <vector>

#include "slabtide/slab/material/layer.h"
#include "slabtide/slab/material/mix_parameters.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// A cover on the slab for a while: its resistance is in series with the surface film.
struct CoverSpan {
  double from_s = 0.0;  ///< seconds from the grid's start
  double to_s = 0.0;
  double resistance_m2k_w = 0.0;
  bool stops_evaporation = true;
};

/// A temperature under the slab.
struct GroundPoint {
  double depth_m = 0.0;  ///< below the slab
  double temperature_c = 0.0;
};

/// One column to solve: a slab of fresh concrete on its base, at one place. Seconds count from the
/// start of the weather grid. The pointers are not owned; what they point to must outlive the call.
struct ColumnCase {
  double batched_s = 0.0;
  double placed_s = 0.0;
  double concrete_c = 0.0;  ///< when placed
  double ground_c = 0.0;    ///< fixed far below
  /// Base and soil at the start, from the top down, straight between; empty: all at `ground_c`.
  std::vector<GroundPoint> ground;
  double thickness_m = 0.0;
  std::vector<Layer> below;  ///< base courses from the slab down, without the soil
  const MixModel* mix = nullptr;
  const CellExposure* exposure = nullptr;
  double absorptance = 0.72;  ///< of sunlight, while wet; falls as the surface dries
                              ///< (absorptance.h)
  std::vector<CoverSpan> covers;
  /// Set age, in hours, from which a sprayed curing compound is on; negative means none.
  double curing_compound_from_set_age_h = -1.0;
  /// Set age, in hours, up to which an evaporation film is kept on the fresh top; negative: none.
  double evaporation_film_to_set_age_h = -1.0;
  /// Of the bleed water, what comes to the top; the base takes the rest.
  double bleed_up_fraction = 1.0;
  /// What cures from this set age on (hours, at mid-depth): a cover of that resistance, which stops
  /// evaporation; negative means none.
  double curing_cover_from_set_age_h = -1.0;
  double curing_cover_m2k_w = 0.0;
  /// What does not dry as concrete does: the share of free-water evaporation that it gives all the
  /// time, its darkness unchanged; negative: as concrete.
  double steady_wetness = -1.0;
  /// A formed vertical face: no bleed, no evaporation, symmetrical about its back (no ground).
  bool formed_face = false;
  // Uncertain factors; 1 is the most likely.
  double convection_factor = 1.0;
  double evaporation_factor = 1.0;
  double bleed_time_factor = 1.0;  ///< on how long the solids take to settle
};

/// The history of a column. Every vector has one entry per recorded instant.
struct ColumnHistory {
  std::vector<double> time_s;     ///< increasing, from placing on
  std::vector<double> surface_c;  ///< the exposed surface
  std::vector<double> middle_c;
  std::vector<double> mean_c;
  /// Top minus bottom of the straight line with the same first moment as the profile.
  std::vector<double> gradient_c;
  std::vector<double> set_age_work_h;  ///< at the working depth, 20 mm
  std::vector<double> set_age_middle_h;
  std::vector<double> resistance_top_psi;     ///< at 5 mm
  std::vector<double> resistance_work_psi;    ///< at 20 mm: what finishers feel
  std::vector<double> resistance_deep_psi;    ///< at 40 mm or mid-depth, whichever is less
  std::vector<double> resistance_middle_psi;  ///< at mid-depth: initial and final set
  std::vector<double> strength_psi;           ///< at the working depth: what the saw meets
  std::vector<double> evaporation_kg_m2_h;
  std::vector<double> bleed_kg_m2_h;
  std::vector<double> bleed_water_kg_m2;  ///< free water on top
};

/// The defaults are the fewest points and longest steps that keep set times well within 20 s of
/// those of many points and short steps (tests/properties/slab/converged_test.cpp).
struct SolverSettings {
  double early_step_s = 240.0;  ///< from placing until final set at mid-depth
  double late_step_s = 600.0;   ///< after that
  /// How close together the temperature is followed: of the slab, and of each layer under it, the
  /// first point below its top lies about so deep or less. Half of it, and points are 1.4 times as
  /// many.
  double slab_spacing_m = 0.013;
  double ground_spacing_m = 0.06;
  double end_s = 0.0;         ///< where to stop; 0 means the grid's end
  int threads = 0;            ///< 0: as many as the machine has
  bool keep_profile = false;  ///< the temperature at many depths at each instant, too
};

/// Where a column's heat came from, J/m2 since placing. What is stored beyond the sum of the others
/// has come from the ground.
struct ColumnEnergy {
  double surface_j_m2 = 0.0;  ///< in through the surface
  double source_j_m2 = 0.0;   ///< released by hydration
  double stored_j_m2 = 0.0;   ///< change since placing
};

/// The result for a column, and its heat balance.
struct ColumnSolution {
  ColumnHistory history;
  ColumnEnergy energy;
  std::vector<double> profile_depth_m;  ///< where a profile is kept
  std::vector<double> profile_c;        ///< all depths at the first instant, at the second, ...
};

}  // namespace slabtide
