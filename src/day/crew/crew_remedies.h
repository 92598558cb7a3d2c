#pragma once

#include <span>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"

namespace slabtide {

/// Tries what could still be changed on the schedule: one and two more hands; the set of the
/// zone that is most late slowed (its windows moved back as they are, its placing kept), as a
/// retarder would; that zone placed later by itself. Those that leave less late, best first.
/// A trial on the timetable: it computes no new windows (`compare` does).
/// `larger`: the schedules of larger crews, rising.
std::vector<CrewRemedy> crew_cures(const std::vector<Task>& tasks, const Schedule& as_planned,
                                   std::span<const Schedule> larger);

}  // namespace slabtide
