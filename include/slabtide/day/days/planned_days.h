#pragma once

#include <optional>

#include "slabtide/day/days/days_plan.h"

namespace slabtide {

/// The days of a forecast with everything they are planned from: what every report of them shows.
struct PlannedDays {
  Job job;
  Forecast forecast;
  Practice practice;
  std::optional<double> forecast_age_h = std::nullopt;  ///< since it was issued, if known
  UtcTime now = {};                                     ///< when they were planned
  DaysPlan days = {};
};

}  // namespace slabtide
