#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/field/weighing.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// A planned job, before anything was seen. The references outlive the call.
struct PlannedCase {
  const Job& job;
  const Forecast& forecast;
  const Practice& practice;
  const PourRun& run;
  const DayPlan& plan;
  std::optional<double> forecast_age_h;
};

/// The day as it looks after what was seen: a run and a plan of their own, with bands.
struct SeenDay {
  PourRun run;
  DayPlan plan;
  std::size_t observations_counted = 0;
  std::vector<Misfit> misfits;
  double ahead_min = 0.0;  ///< of the plan, the mean of the zones' main openings; negative: behind
};

/// Weighs the days that may come by the journal's readings and plans again for their mean.
SeenDay see_day(const PlannedCase& planned, const Journal& journal,
                const EnsembleSettings& settings);

/// "the slab runs 22 min ahead of the plan; walk now opens 11:35 (11:20-11:55)": the main
/// openings still to come at `now`. Without a full stop.
std::string seen_words(const SeenDay& seen, const Job& job, UtcTime now);

}  // namespace slabtide
