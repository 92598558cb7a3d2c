#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// How late a crew is over the sampled days.
struct LateDays {
  double expected_min = 0.0;
  double bad_day_min = 0.0;  ///< on nine days out of ten it is no later than this
  /// For each task; empty for those that do not follow the setting.
  std::vector<std::optional<double>> task_chances;
  /// Likewise of being later than `finish_lost_min`, or of a window that never comes.
  std::vector<std::optional<double>> lost_chances;
  /// The fraction of the days on which any work that makes the finish is lost.
  double finish_lost_fraction = 0.0;
  /// Likewise of each zone, parallel to the plan's zones; empty without sampled days.
  std::vector<double> zone_lost_fractions;
};

/// The crew's tasks on each of the ensemble's days. Their windows move as those of the same zone
/// and operation do on the day that `sampled_for` is the plan of. The crew works them in the
/// planned order with the planned workers, each as soon as it can start, so a task that is late or
/// has to wait holds up the next.
///
/// Idealises: the crew does not change its order on the day, even if another would be better. A
/// window that does not happen on a day is missed, and its work is done when it was planned. For
/// another pour than the days were sampled for, the effect of the weather on another dose or start
/// is taken to be the same (`put_right`). Status: ours.
LateDays late_days(const CrewPlan& crew, const DayPlan& sampled_for, const Ensemble& ensemble);

/// What many days tell of another pour than they were sampled for, put right by a few of them on
/// which that pour was solved: what the few told before is taken off, and what they tell then is
/// added (a control variate). Nothing falls below 0, and no share rises above 1.
LateDays put_right(LateDays many, const LateDays& few, const LateDays& few_solved);

}  // namespace slabtide
