#pragma once

#include "slabtide/slab/column.h"

namespace slabtide {

/// For how times move from one day to another: longer steps and fewer cells than a plan takes.
/// Ours, by measurement: against the plan's own the moves differ by under a minute
/// (tests/unit/day/ensemble_test.cpp).
inline constexpr SolverSettings quick_solver{.early_step_s = 120.0,
                                             .late_step_s = 600.0,
                                             .slab_cells = 10,
                                             .ground_cells = 8,
                                             .end_s = 0.0,
                                             .threads = 1};

}  // namespace slabtide
