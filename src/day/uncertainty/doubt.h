#pragma once

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// How sure a plan with bands is, and where the doubt comes from (bands.h).
Sureness sureness_of(const DayPlan& plan, const std::vector<Operation>& main_work,
                     const Ensemble& ensemble);

}  // namespace slabtide
