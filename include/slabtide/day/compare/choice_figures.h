#pragma once

#include <optional>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// A day in the figures that choices are told apart by.
struct ChoiceFigures {
  std::optional<UtcTime> first_window;  ///< the first main window of any zone opens
  std::optional<UtcTime> last_window;   ///< the last one closes
  double minutes_late = 0.0;            ///< of the finishing crew, in all
  double expected_late_min = 0.0;       ///< over the days that may come
  double bad_day_late_min = 0.0;        ///< on nine days of ten it is no later
  std::optional<int> smallest_crew;     ///< that is late for nothing; empty where none is
  double crew_hours = 0.0;              ///< on site, over the crew that comes
  double peak_evaporation_kg_m2_h = 0.0;
  int early_sheens = 0;  ///< zones whose top dries ahead of its bleeding
  int crusts = 0;        ///< zones whose top stiffens ahead of the body
  std::optional<UtcTime> last_finish;
  std::optional<double>
      daylight_left_min;              ///< from the last finish to sunset; negative in the dark
  std::optional<UtcTime> latest_saw;  ///< the first zone that must be cut is cut by then
  bool saw_at_night = false;
  int stops = 0;
  int cautions = 0;
  int notes = 0;
};

/// The days that may come for the job as ordered.
struct SampledDays {
  const DayPlan& plan;  ///< that they were drawn for
  const Ensemble& ensemble;
};

/// Without `drawn` the day as planned is the only one that may come.
ChoiceFigures figures_of(const Job& job, const DayPlan& plan,
                         const std::optional<SampledDays>& drawn = std::nullopt);

}  // namespace slabtide
