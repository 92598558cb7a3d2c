#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"
#include "weighing.h"

namespace slabtide {

/// The day as it looks after what was seen: a run and a plan of their own, with bands.
struct SeenDay {
  PourRun run;
  DayPlan plan;
  std::size_t observations_counted = 0;
  std::vector<Misfit> misfits;
  double ahead_min = 0.0;  ///< of the plan, the mean of the zones' main openings; negative: behind
};

/// Weighs the days that may come by the journal's readings and plans again for their mean.
/// `planned` is the day before anything was seen.
SeenDay see_day(const PlannedPour& planned, const EnsembleSettings& settings);

/// "the slab runs 22 min ahead of the plan; walk now opens 11:35 (11:20-11:55)": the main
/// openings still to come at `now`. Without a full stop.
std::string seen_words(const SeenDay& seen, const Job& job, UtcTime now);

}  // namespace slabtide
