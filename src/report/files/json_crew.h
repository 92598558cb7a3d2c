#pragma once

#include <vector>

#include "json_values.h"
#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/crew/supplies.h"
#include "slabtide/day/windows/touch.h"
#include "slabtide/job/model/job.h"

// The crew's share of the plan's JSON.

namespace slabtide {

/// An array with one entry per person: name, arrives, leaves (on the pour's day), tasks, idle, and
/// later visits under `returns`. Those who are not needed are left out.
Json json_crew(const CrewPlan& crew, const Job& job);

/// Facts about the crew as a whole: size, the smallest that would do, lateness, remedies; null if
/// no crew was planned.
Json json_crew_summary(const CrewPlan& crew, const Job& job);

/// An array with one entry per part and quarter hour: at, part, operation, touch, resistance.
Json json_touch(const std::vector<PartTouch>& touches, const Job& job);

/// An array with item, amount in the unit of the key and in words, area, zones.
Json json_supplies(const std::vector<Supply>& supplies, UnitSystem units);

}  // namespace slabtide
