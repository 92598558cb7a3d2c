#pragma once

#include <vector>

#include "slabtide/slab/material/layer.h"
#include "slabtide/slab/material/mix_parameters.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// Something on the slab for a while: its resistance stands in series with the surface film.
struct CoverSpan {
  double from_s = 0.0;  ///< seconds from the grid's start
  double to_s = 0.0;
  double resistance_m2k_w = 0.0;
  bool stops_evaporation = true;
};

/// One column to solve: a slab of fresh concrete on its base, at one place. Seconds count
/// from the weather grid's start. The pointers are not owned and outlive the call.
struct ColumnCase {
  double batched_s = 0.0;
  double placed_s = 0.0;
  double concrete_c = 0.0;  ///< when placed
  double ground_c = 0.0;    ///< base and soil at the start, fixed below
  double thickness_m = 0.0;
  std::vector<Layer> below;  ///< base courses, from the slab down; soil follows by itself
  const MixModel* mix = nullptr;
  const CellExposure* exposure = nullptr;
  double absorptance = 0.72;  ///< of the sun while wet; falls as it dries (absorptance.h)
  std::vector<CoverSpan> covers;
  /// A sprayed curing film from this set age on (hours); negative means none.
  double curing_compound_from_set_age_h = -1.0;
  /// A formed vertical face: no bleed, no evaporation, symmetrical behind (no ground).
  bool formed_face = false;
  // Uncertain factors, 1 for the likely case.
  double convection_factor = 1.0;
  double evaporation_factor = 1.0;
};

/// What a column goes through. One entry a recorded instant in every vector.
struct ColumnHistory {
  std::vector<double> time_s;     ///< rising, from placing on
  std::vector<double> surface_c;  ///< the exposed surface itself
  std::vector<double> middle_c;
  std::vector<double> mean_c;
  /// Top less bottom of the straight line with the profile's own first moment.
  std::vector<double> gradient_c;
  std::vector<double> set_age_work_h;  ///< at the working depth, 20 mm
  std::vector<double> set_age_middle_h;
  std::vector<double> resistance_top_psi;     ///< at 5 mm
  std::vector<double> resistance_work_psi;    ///< at 20 mm: what finishers feel
  std::vector<double> resistance_deep_psi;    ///< at 40 mm or the middle, the lesser depth
  std::vector<double> resistance_middle_psi;  ///< at mid-depth: initial and final set
  std::vector<double> strength_psi;           ///< at the working depth: what the saw meets
  std::vector<double> evaporation_kg_m2_h;
  std::vector<double> bleed_kg_m2_h;
  std::vector<double> bleed_water_kg_m2;  ///< free water on top
};

/// The fewest cells and the longest steps that keep set times well within a minute of those of
/// many fine cells and short steps (tests/properties/slab/converged_test.cpp).
struct SolverSettings {
  double early_step_s = 120.0;  ///< from placing until final set at mid-depth
  double late_step_s = 600.0;   ///< after
  int slab_cells = 12;
  int ground_cells = 10;
  double end_s = 0.0;  ///< where to stop; 0 means the grid's end
  int threads = 0;     ///< 0: as many as the machine has
};

/// Where a column's heat came from and went, J/m2 since placing. Stored is the sum of the rest.
struct ColumnEnergy {
  double surface_j_m2 = 0.0;  ///< in through the surface
  double ground_j_m2 = 0.0;   ///< in from the fixed ground below
  double source_j_m2 = 0.0;   ///< released by hydration
  double stored_j_m2 = 0.0;   ///< more than at placing
};

/// What came of a column, and where its heat went.
struct ColumnSolution {
  ColumnHistory history;
  ColumnEnergy energy;
};

}  // namespace slabtide
