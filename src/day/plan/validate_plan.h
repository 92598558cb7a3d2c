#pragma once

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// Error: std::invalid_argument if the plan is not for a job with these zones. The message names
/// the field.
void validate(const DayPlan& plan, const Job& job);

}  // namespace slabtide
