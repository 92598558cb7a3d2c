#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// How far the concrete delivered differs from the one described. Factors are 1 and offsets 0 if it
/// does not.
struct MixErrors {
  double discharge_k = 0.0;               ///< warmer than stated
  double set_time_factor = 1.0;           ///< on initial and final set
  double set_span_factor = 1.0;           ///< additional, on the time between the two
  double activation_energy_factor = 1.0;  ///< on the activation energy of setting
  double admixture_factor = 1.0;          ///< on the shift of the admixtures
  double bleed_factor = 1.0;
  double strength_factor = 1.0;   ///< at every age
  double expansion_factor = 1.0;  ///< on the expansion by warmth
};

/// The model of the concrete delivered.
///
/// Idealises: what slows the set slows heat and strength by as much (tau and t_0 are scaled too).
/// Status: ours.
/// Error: std::invalid_argument for a factor that is not positive or a value that is not finite.
MixModel with_errors(const MixModel& mix, const MixErrors& errors);

}  // namespace slabtide
