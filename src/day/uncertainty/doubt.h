#pragma once

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// How sure a plan with bands is, and what of the doubt comes from where (bands.h).
Sureness sureness_of(const DayPlan& plan, const std::vector<Operation>& main_work,
                     const Ensemble& ensemble);

}  // namespace slabtide
