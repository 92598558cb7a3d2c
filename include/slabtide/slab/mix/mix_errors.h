#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// How far the concrete that comes is off the one described. Factors are 1 and offsets 0 where
/// it is not.
struct MixErrors {
  double discharge_k = 0.0;               ///< warmer than told
  double set_time_factor = 1.0;           ///< on initial and final set
  double set_span_factor = 1.0;           ///< on what lies between the two, besides
  double activation_energy_factor = 1.0;  ///< on the activation energy of setting
  double admixture_factor = 1.0;          ///< on the shift of the admixtures
  double bleed_factor = 1.0;
};

/// The model of the concrete that comes.
///
/// Idealises: what slows the set slows the heat and the strength by as much (tau and t_0 go
/// along). Status: ours.
/// Error: std::invalid_argument for a factor that is not above 0 or a value that is not finite.
MixModel with_errors(const MixModel& mix, const MixErrors& errors);

}  // namespace slabtide
