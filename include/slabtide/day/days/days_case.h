#pragma once

#include <optional>

#include "slabtide/day/practice/practice.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// What the days are planned from. Date and start of the job are only a wish: of equal days the
/// nearest to it is taken. The references must outlive the call.
struct DaysCase {
  const Job& job;
  const Forecast& forecast;
  const Practice& practice;
  UtcTime now;  ///< a start whose plant could not be told any more is gone by
  std::optional<double> forecast_age_h = std::nullopt;
};

/// No later days of a forecast are looked at (ours): what services give is no longer.
inline constexpr long max_days_ahead = 16;

}  // namespace slabtide
