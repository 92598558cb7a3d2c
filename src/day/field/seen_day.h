#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/plan/planned_pour.h"
#include "weighing.h"

namespace slabtide {

/// The day given what was observed: its own run and plan, with bands.
struct SeenDay {
  PourRun run;
  DayPlan plan;
  std::size_t observations_counted = 0;
  std::vector<Misfit> misfits;
  double ahead_min = 0.0;  ///< ahead of the plan, mean over the zones' main openings; negative:
                           ///< behind
};

/// Weights the sampled days by the journal's observations and plans again for their mean. `planned`
/// is the day before any observation. With no samples asked for the observations count all the
/// same, weighed over a few days, and the plan has no bands.
SeenDay see_day(const PlannedPour& planned, const EnsembleSettings& settings);

/// "the slab runs 22 min ahead of the plan; walk now opens 11:35 (11:20-11:55)": the main openings
/// after `now`. Without a full stop.
std::string seen_words(const SeenDay& seen, const Job& job, UtcTime now);

}  // namespace slabtide
