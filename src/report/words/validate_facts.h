#pragma once

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Error: std::invalid_argument if job, forecast or practice cannot be planned with, or run and
/// plan do not belong to this job (job/checks/validate.h, weather/readers/validate_forecast.h,
/// day/pour/validate_run.h, day/plan/validate_plan.h). Every report of a plan calls this first.
void validate(const PlannedPour& facts);

}  // namespace slabtide
