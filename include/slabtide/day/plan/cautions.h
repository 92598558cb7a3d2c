#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/plan/caution.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"

namespace slabtide {

/// Every caution of a day that is planned but for its cautions, each with its hour, in the
/// order of time; those that hold all day come last. The one list that all commands show.
/// `forecast_age_h`: hours since the forecast was issued, where that is known.
std::vector<Caution> find_cautions(const Job& job, const PourRun& run, const DayPlan& plan,
                                   const Practice& practice, std::optional<double> forecast_age_h);

}  // namespace slabtide
