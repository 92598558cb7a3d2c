#pragma once

#include <vector>

#include "slabtide/day/crew/task.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The day's work in a possible order: each task comes after those it waits for. Joints are sawn or
/// tooled as chosen in `cuts`. Work after the end of the forecast is left out.
std::vector<Task> day_tasks(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                            const Practice& practice);

}  // namespace slabtide
