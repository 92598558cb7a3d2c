#pragma once

#include <vector>

#include "slabtide/day/crew/task.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The day's work in an order in which it can be done: each task comes after those it waits
/// for. Joints are sawn or tooled as `cuts` chose. What the forecast is too short for is left out.
std::vector<Task> day_tasks(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                            const Practice& practice);

}  // namespace slabtide
