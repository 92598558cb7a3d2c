#pragma once

#include <vector>

#include "slabtide/slab/column.h"
#include "slabtide/slab/mix_model.h"

namespace slabtide {

/// The uncut piece the stress is asked for.
struct StressCase {
  double uncut_length_m = 0.0;
  double thickness_m = 0.0;
  bool tied = false;
  bool re_entrant_corner = false;
};

/// Stress over tensile strength at each instant of the history; 0 before final set.
std::vector<double> stress_ratio(const ColumnHistory& history, const MixModel& mix,
                                 const StressCase& piece);

}  // namespace slabtide
