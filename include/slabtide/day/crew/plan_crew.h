#pragma once

#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/crew/tasks.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/zone_plan.h"

namespace slabtide {

/// The crew's day on the tasks of the zones and cuts of a job; `threads` as in SolverSettings.
/// Error: std::invalid_argument for a crew under one.
CrewPlan plan_crew(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                   const Practice& practice, CrewDepth depth = CrewDepth::remedies,
                   int threads = 1);

}  // namespace slabtide
