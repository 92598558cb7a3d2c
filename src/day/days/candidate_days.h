#pragma once

#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/days/days_case.h"
#include "slabtide/weather/site/weather_series.h"

namespace slabtide {

/// A day of the forecast and the starts to try on it.
struct CandidateDay {
  Date date;
  std::vector<UtcTime> starts;  ///< by the clock
  std::string why_none;         ///< where there are no starts
};

/// The days of the forecast from today on.
std::vector<CandidateDay> candidate_days(const DaysCase& asked, const WeatherSeries& series);

/// Why no day of the forecast can be planned.
Diagnostic no_day_fault(const DaysCase& asked, const WeatherSeries& series);

}  // namespace slabtide
