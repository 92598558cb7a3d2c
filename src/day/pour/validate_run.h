#pragma once

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Error: std::invalid_argument if the run is not for a job with these zones, or has an index
/// outside itself. The message names the field.
void validate(const PourRun& run, const Job& job);

}  // namespace slabtide
