#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/day_plan.h"
#include "slabtide/day/ensemble.h"

namespace slabtide {

/// The chance that each task of the plan's schedule is late (CrewPlan::late_chances).
///
/// Idealises: each task by itself; one that is late or waits does not hold up the next. The crew
/// does not plan anew on the day, which it will.
std::vector<std::optional<double>> late_chances(const DayPlan& plan, const Ensemble& ensemble);

}  // namespace slabtide
