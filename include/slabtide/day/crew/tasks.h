#pragma once

#include <vector>

#include "slabtide/day/crew/task.h"
#include "slabtide/day/joints/cut_plan.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The work of a day.
struct DayWork {
  /// In a possible order: each comes after those it waits for.
  std::vector<Task> tasks;
  /// Finishing that opens after the plan's end, without times: nobody can be put on it.
  std::vector<Task> after_plan;
};

/// Joints are sawn or tooled as chosen in `cuts`. Next-day work after the plan's end is left out.
DayWork day_work(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                 const Practice& practice);

}  // namespace slabtide
