#pragma once

#include <cstddef>
#include <memory>

#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// A choice's own pour solved on some of the possible days. The windows of the job as ordered,
/// moved as its days move them, make a choice look safer than it is.
class OwnDays {
 public:
  /// So many of the days (ours); fewer where more than `max_columns` would be solved.
  static constexpr std::size_t usual_days = 60;
  static constexpr std::size_t max_columns = 1200;
  /// On fewer a pour is not solved: a comparison is not to take longer than one waits for it.
  static constexpr std::size_t min_days = 20;

  /// On the first of the days that were drawn for the job as ordered; works on this thread alone.
  /// Null if the pour has too many columns.
  static std::unique_ptr<const OwnDays> solve(const Job& job, const Forecast& forecast,
                                              const Practice& practice, const PourRun& run,
                                              const DayPlan& plan, const Ensemble& ordered);

  /// Valid as long as this lives.
  SampledDays days() const { return {plan_, ensemble_}; }

 private:
  OwnDays(const DayPlan& plan, Ensemble ensemble);

  DayPlan plan_;
  Ensemble ensemble_;
};

}  // namespace slabtide
