#pragma once

#include <optional>

#include "slabtide/day/day_plan.h"
#include "slabtide/day/pour_run.h"
#include "slabtide/day/practice.h"

namespace slabtide {

/// What a choice asks of the finishing crew.
struct CrewMeasure {
  double minutes_late = 0.0;
  std::optional<int> smallest_crew;  ///< that is late for nothing
  double crew_hours = 0.0;
  std::optional<UtcTime> last_finish;
};

/// One crew works through the main operations zone after zone, each zone in the order its
/// cells get ready; a zone is late by as much as its latest cell is done after it closed.
CrewMeasure measure_crew(const Job& job, const PourRun& run, const DayPlan& plan,
                         const Practice& practice);

}  // namespace slabtide
