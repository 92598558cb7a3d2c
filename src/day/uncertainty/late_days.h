#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

namespace slabtide {

/// How late a crew is over the days that may come.
struct LateDays {
  double expected_min = 0.0;
  double bad_day_min = 0.0;  ///< on nine days of ten it is no later
  /// Of each task; empty for those that do not follow the setting.
  std::vector<std::optional<double>> task_chances;
};

/// The crew's tasks on each of the ensemble's days: their windows move as those of the same zone
/// and operation move on the day that `sampled_for` is the plan of, and the crew works them in the
/// planned order by the planned hands, each as soon as it can be begun; one that is late or has
/// to wait holds up the next.
///
/// Idealises: another dose or start moves with the weather as the job as ordered does; a crew
/// that could do better in another order does not change it on the day. A window that does not
/// come on a day is missed, and its work done when it was planned. Status: ours.
LateDays late_days(const CrewPlan& crew, const DayPlan& sampled_for, const Ensemble& ensemble);

}  // namespace slabtide
