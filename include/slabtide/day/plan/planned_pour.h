#pragma once

#include <optional>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"
#include "slabtide/job/records/journal.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// A pour, everything its day is planned from, and the planned day: what every report shows and
/// every comparison starts from.
struct PlannedPour {
  Job job;
  Forecast forecast;
  Practice practice;
  PourRun run;
  DayPlan plan;
  std::optional<double> forecast_age_h = std::nullopt;  ///< since it was issued, if known
  Journal journal = {};                                 ///< what has been noted so far
  UtcTime now = {};                                     ///< when it was planned
};

}  // namespace slabtide
