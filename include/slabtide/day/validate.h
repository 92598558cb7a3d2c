#pragma once

#include "slabtide/day/day_plan.h"
#include "slabtide/day/pour_run.h"
#include "slabtide/day/practice.h"
#include "slabtide/job/job.h"

// Whether what was put together in code is what the library can plan with, and whether results
// belong to the job they are handed in with.

namespace slabtide {

/// Error: std::invalid_argument where a number is outside what a practice file may say, not finite
/// or not in order with another. The message begins with its path, "operation.stamp.opens_psi".
void validate(const Practice& practice);

/// Error: std::invalid_argument where the run is not one of a job with these zones, or points
/// outside of itself.
void validate(const PourRun& run, const Job& job);

/// The same for a plan.
void validate(const DayPlan& plan, const Job& job);

}  // namespace slabtide
