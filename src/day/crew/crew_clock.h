#pragma once

#include "slabtide/day/crew/crew_plan.h"

namespace slabtide {

/// Fills in what follows from the tasks, the roster and the schedule of a plan: the times,
/// everybody's stays, the tightest task and the late ones. `job` has the start that minutes count
/// from.
void put_on_the_clock(CrewPlan& plan, const Job& job, const WorkHours& hours);

/// Of those only the tightest task and the late ones.
void find_late(CrewPlan& plan);

}  // namespace slabtide
