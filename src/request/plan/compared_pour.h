#pragma once

#include <cstddef>
#include <functional>

#include "slabtide/day/compare/advice.h"
#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/turning_point.h"

namespace slabtide {

/// What can still be changed, which of it is best, and what would change that.
struct ComparedPour {
  Comparison comparison;
  TurningPoint turning;
  Advice advice;
};

/// Compares on this many sampled days, 0 for the planned day alone: as many as the plan has
/// (`usual_samples`), or a finish lost too often stops the one and not the other. `threads` and
/// `progress` as in CompareSettings.
ComparedPour compare_pour(const PlannedPour& pour, std::size_t samples, int threads,
                          std::function<void(std::size_t done)> progress);

}  // namespace slabtide
