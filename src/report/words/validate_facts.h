#pragma once

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Error: std::invalid_argument where job, forecast or practice are none that can be planned with,
/// or run and plan are not of this job (slabtide/job/checks/validate.h,
/// weather/readers/validate_forecast.h, day/validate.h). Every report of a plan asks first.
void validate(const PlannedPour& facts);

}  // namespace slabtide
