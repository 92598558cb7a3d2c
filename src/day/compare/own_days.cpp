#include "own_days.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

OwnDays::OwnDays(const DayPlan& plan, Ensemble ensemble)
    : plan_(plan), ensemble_(std::move(ensemble)) {}

std::unique_ptr<const OwnDays> OwnDays::solve(const Job& job, const Forecast& forecast,
                                              const Practice& practice, const PourRun& run,
                                              const DayPlan& plan, const Ensemble& ordered) {
  const DayModel model(job, run, plan, practice, sample_scale(job, run, forecast, practice.spread));
  const std::size_t days =
      std::min({usual_days, max_columns / model.columns(), ordered.days.size()});
  if (days < std::min(min_days, ordered.days.size())) return nullptr;
  Ensemble own = first_days(ordered, days);
  own.zones = model.zones();
  own.planned = model.on(own.central);
  own.days =
      solve_days(model, own.uncertain_inputs, {.samples = days, .threads = 1, .progress = {}});
  return std::unique_ptr<const OwnDays>(new OwnDays(plan, std::move(own)));
}

}  // namespace slabtide
