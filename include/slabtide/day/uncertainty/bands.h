#pragma once

#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// The plan with a band at each of its times, and how sure it is as a whole. A band is the plan's
/// own time moved as the columns that stand for the part move from the planned day to each day that
/// may come.
///
/// A time the plan does not have gets a band without times that says on what share of the days
/// it comes. Causes of doubt by the squared correlation of each uncertain input with the main
/// openings: the uncertain inputs are independent, and over their range times move nearly straight.
DayPlan with_bands(DayPlan plan, const Job& job, const Ensemble& ensemble);

}  // namespace slabtide
