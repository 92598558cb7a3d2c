#pragma once

#include <optional>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// A pour with all that its day is planned from, and that day: what every report shows and every
/// comparison starts from.
struct PlannedPour {
  Job job;
  Forecast forecast;
  Practice practice;
  PourRun run;
  DayPlan plan;
  std::optional<double> forecast_age_h = std::nullopt;  ///< hours since it was issued, where known
  Journal journal = {};                                 ///< what was noted so far
  UtcTime now = {};                                     ///< the moment it was planned at
};

}  // namespace slabtide
