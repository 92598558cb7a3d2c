#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/days/days_case.h"
#include "slabtide/day/days/forecast_day.h"

// Which day to pour: every day that a forecast holds, planned at several starts.

namespace slabtide {

/// A day of the forecast that was not planned, and the reason.
struct LeftOutDay {
  Date date;
  std::string why;
};

/// The days and which of them is best.
struct DaysPlan {
  std::vector<ForecastDay> days;  ///< by date, at least one
  std::vector<LeftOutDay> left_out;
  std::size_t best = 0;  ///< index into days

  const ForecastDay& chosen() const { return days[best]; }
};

/// How to compute the days, and how to report progress.
struct DaysSettings {
  std::size_t samples = 0;     ///< days drawn for the best starts of each day; 0 for none
  bool fewer_of_many = false;  ///< of very many zones no more than `samples_for` says
  int threads = 0;  ///< 0: as many as the machine has; the figures are the same for any number
  /// Called after each start computed, by one thread at a time; may be empty.
  std::function<void(std::size_t done)> progress = {};
};

/// Plans each day that the forecast covers from the first batch to DaysRules::reach_h after the
/// start, at every full hour between CompareRules::earliest_start_h and latest_start_h and at the
/// job's own hour. Of the starts of a day, and then of the days, that is best whose stakes are less
/// (`better`), then with the smallest chance of loss, then the fewest minutes late, then what is
/// nearest to the job's own start; to the first day, if the job's is not among them. A crew that is
/// late gets as many hands as it takes, if these can be found. `value` is absent if no day is left
/// to plan.
Parsed<DaysPlan> plan_days(const DaysCase& asked, const DaysSettings& settings);

}  // namespace slabtide
