#pragma once

#include <string>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/crew/supplies.h"
#include "slabtide/day/windows/touch.h"
#include "slabtide/job/model/job.h"

// The crew's part of the plan's JSON, as JSON texts that json_plan inserts.

namespace slabtide {

/// An array with one entry per person: name, arrives, leaves (on the pour's day), tasks, idle, and
/// later visits under `returns`. Those who are not needed are left out.
std::string json_crew(const CrewPlan& crew, const Job& job);

/// Facts about the crew as a whole: size, the smallest that would do, lateness, remedies; null if
/// no crew was planned.
std::string json_crew_summary(const CrewPlan& crew, const Job& job);

/// An array with one entry per part and quarter hour: at, part, operation, touch, resistance.
std::string json_touch(const std::vector<PartTouch>& touches, const Job& job);

/// An array with item, amount in the unit of the key, area, zones.
std::string json_supplies(const std::vector<Supply>& supplies);

}  // namespace slabtide
