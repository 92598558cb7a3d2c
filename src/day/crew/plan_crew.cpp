#include "slabtide/day/crew/plan_crew.h"

#include <algorithm>
#include <span>

#include "crew_clock.h"
#include "job/checks/validate.h"
#include "lent_tasks.h"

namespace slabtide {

namespace {

void find_smallest(CrewPlan& plan, const std::vector<Schedule>& schedules) {
  plan.min_late_min = schedules.back().late_min;
  const auto enough = std::find_if(
      schedules.begin(), schedules.end(),
      [&plan](const Schedule& schedule) { return schedule.late_min == plan.min_late_min; });
  plan.enough_crew = enough->crew;
  if (plan.min_late_min == 0) plan.smallest_crew = plan.enough_crew;
}

/// Sets the schedule of the job's own crew, and gives those of the larger crews that were tried.
std::vector<Schedule> schedule_count(CrewPlan& plan, bool alone) {
  const int crew = plan.roster.size();
  const int min = min_crew(plan.tasks);
  const int max = std::max({alone ? crew : max_crew_tried, crew, min});
  std::vector<Schedule> schedules = schedules_until_in_time(plan.tasks, crew, max);
  if (!alone) find_smallest(plan, schedules);
  plan.short_handed = lend_to(plan.tasks, plan.roster);
  plan.schedule = plan.short_handed ? schedule(plan.tasks, crew)
                                    : schedules[static_cast<std::size_t>(crew - min)];
  const auto larger = std::find_if(schedules.begin(), schedules.end(),
                                   [crew](const Schedule& other) { return other.crew > crew; });
  schedules.erase(schedules.begin(), larger);
  return schedules;
}

/// The same for a crew of which it matters who does what: no smaller one is tried, because it would
/// have to be said who stays at home.
std::vector<Schedule> schedule_hands(CrewPlan& plan, bool alone) {
  plan.short_handed = lend_to(plan.tasks, plan.roster);
  const int max = std::max(alone ? 0 : max_crew_tried, plan.roster.size());
  std::vector<Schedule> schedules = schedules_until_in_time(plan.tasks, plan.roster, max);
  if (!alone) find_smallest(plan, schedules);
  plan.schedule = schedules.front();
  schedules.erase(schedules.begin());
  return schedules;
}

}  // namespace

CrewPlan plan_crew(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                   const Practice& practice, CrewDepth depth, int threads) {
  validate(job);
  validate(practice);
  CrewPlan plan;
  plan.roster = roster_of(job);
  DayWork work = day_work(job, zones, cuts, practice);
  plan.tasks = std::move(work.tasks);
  plan.after_plan = std::move(work.after_plan);
  const bool alone = depth == CrewDepth::own_crew;
  const std::vector<Schedule> larger =
      plan.roster.is_count() ? schedule_count(plan, alone) : schedule_hands(plan, alone);
  put_on_the_clock(plan, job, practice.crew.hours);
  if (!plan.late.empty() && depth == CrewDepth::remedies) {
    CrewHelp help = crew_remedies(plan.tasks, plan.roster, plan.schedule, larger, threads);
    plan.remedies = std::move(help.remedies);
    plan.rescues = std::move(help.rescues);
  }
  return plan;
}

}  // namespace slabtide
