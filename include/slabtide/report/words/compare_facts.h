#pragma once

#include "slabtide/day/compare/advice.h"
#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/turning_point.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Everything that a report of a comparison shows. The references must outlive the call.
struct CompareFacts {
  const PlannedPour& plan;  ///< of the job as ordered
  const Comparison& comparison;
  const TurningPoint& turning;
  const Advice& advice;
};

}  // namespace slabtide
