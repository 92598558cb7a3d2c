#pragma once

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Error: std::invalid_argument where the run is not one of a job with these zones, or points
/// outside of itself. The message names the field.
void validate(const PourRun& run, const Job& job);

}  // namespace slabtide
