#pragma once

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"

namespace slabtide {

/// What can still be changed about `job`, whose day is `run` and `plan`. A change that gives the
/// same concrete, hours and crew as an earlier one is left out, and so is one that makes no sense
/// for this job.
Choices find_choices(const Job& job, const PourRun& run, const DayPlan& plan,
                     const Practice& practice);

}  // namespace slabtide
