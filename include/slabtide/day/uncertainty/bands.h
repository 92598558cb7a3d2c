#pragma once

#include <vector>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// The plan with a band at each of its times, and how sure it is as a whole. A band is the plan's
/// own time, moved by as much as the times of the columns representing the part move between the
/// planned day and each sampled day.
///
/// A time that the plan does not have gets a band without times, with the fraction of days on which
/// it happens. Causes of doubt are ranked by the squared correlation of each uncertain input with
/// the main openings: the inputs are independent, and within their range times depend almost
/// linearly on them.
DayPlan with_bands(DayPlan plan, const Job& job, const Ensemble& ensemble);

}  // namespace slabtide
