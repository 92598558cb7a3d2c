#include "slabtide/day/crew/crew_plan.h"

#include <algorithm>
#include <numeric>
#include <span>

#include <fmt/format.h>

#include "job/checks/validate.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// Lowers the number of workers that a task needs to the size of the crew; true if any task was
/// affected.
bool lend_to(std::vector<Task>& tasks, int crew) {
  bool short_handed = false;
  for (Task& task : tasks) {
    if (task.min_hands <= crew) continue;
    task.min_hands = crew;
    short_handed = true;
  }
  return short_handed;
}

std::vector<std::size_t> tasks_of(const Schedule& schedule, int who) {
  std::vector<std::size_t> mine;
  for (std::size_t i = 0; i < schedule.assignments.size(); ++i) {
    const std::vector<int>& hands = schedule.assignments[i].who;
    if (std::find(hands.begin(), hands.end(), who) != hands.end()) mine.push_back(i);
  }
  std::sort(mine.begin(), mine.end(), [&schedule](std::size_t a, std::size_t b) {
    return schedule.assignments[a].start_min < schedule.assignments[b].start_min;
  });
  return mine;
}

/// Groups one person's tasks into stays on site: those who would wait too long go home in between.
std::vector<CrewVisit> visits_of(const std::vector<std::size_t>& mine, const CrewPlan& plan,
                                 const Job& job, const WorkHours& hours) {
  std::vector<CrewVisit> visits;
  for (const std::size_t task : mine) {
    const UtcTime start = plan.starts[task];
    const double wait_min =
        visits.empty() ? 0.0 : seconds_between(visits.back().leaves, start) / seconds_per_minute;
    if (visits.empty() || wait_min > hours.go_home_min) {
      // Time to check forms, base and tools is needed before the first work only.
      const double before_min = visits.empty() ? job.crew.arrive_before_min : 0.0;
      visits.push_back({after_seconds(start, -before_min * seconds_per_minute), {}, {}, {}});
    } else if (wait_min > hours.idle_told_min) {
      visits.back().idle.push_back({visits.back().leaves, start});
    }
    visits.back().tasks.push_back(task);
    visits.back().leaves = plan.ends[task];
  }
  return visits;
}

std::optional<TightTask> tightest_of(const CrewPlan& plan) {
  std::optional<TightTask> tightest;
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const Assignment& at = plan.schedule.assignments[i];
    const auto slack_min = plan.tasks[i].slack_min(at.start_min, at.end_min);
    if (slack_min && (!tightest || *slack_min < tightest->slack_min)) tightest = {i, *slack_min};
  }
  return tightest;
}

std::vector<std::size_t> late_tasks(const Schedule& schedule) {
  std::vector<std::size_t> late;
  for (std::size_t i = 0; i < schedule.assignments.size(); ++i) {
    if (schedule.assignments[i].late_min > 0) late.push_back(i);
  }
  std::stable_sort(late.begin(), late.end(), [&schedule](std::size_t a, std::size_t b) {
    return schedule.assignments[a].late_min > schedule.assignments[b].late_min;
  });
  return late;
}

void find_smallest(CrewPlan& plan, const std::vector<Schedule>& schedules) {
  plan.min_late_min = schedules.back().late_min;
  const auto enough = std::find_if(
      schedules.begin(), schedules.end(),
      [&plan](const Schedule& schedule) { return schedule.late_min == plan.min_late_min; });
  plan.enough_crew = enough->crew;
  if (plan.min_late_min == 0) plan.smallest_crew = plan.enough_crew;
}

void put_on_the_clock(CrewPlan& plan, const Job& job, const Practice& practice) {
  for (const Assignment& at : plan.schedule.assignments) {
    plan.starts.push_back(after_seconds(job.pour.start, at.start_min * seconds_per_minute));
    plan.ends.push_back(after_seconds(job.pour.start, at.end_min * seconds_per_minute));
  }
  for (int who = 0; who < plan.schedule.crew; ++who) {
    plan.people.push_back(
        {fmt::format("finisher {}", who + 1),
         visits_of(tasks_of(plan.schedule, who), plan, job, practice.crew.hours)});
  }
}

}  // namespace

double CrewPlan::crew_hours() const {
  double seconds = 0.0;
  for (const CrewMember& member : people) {
    for (const CrewVisit& visit : member.visits) {
      seconds += seconds_between(visit.arrives, visit.leaves);
    }
  }
  return seconds / seconds_per_hour;
}

CrewPlan plan_crew(const Job& job, const std::vector<ZonePlan>& zones, const CutPlan& cuts,
                   const Practice& practice, CrewDepth depth) {
  validate(job);
  validate(practice);
  const int crew = job.crew.finishers;
  CrewPlan plan;
  DayWork work = day_work(job, zones, cuts, practice);
  plan.tasks = std::move(work.tasks);
  plan.after_plan = std::move(work.after_plan);
  const int min = min_crew(plan.tasks);
  const bool alone = depth == CrewDepth::own_crew;
  const int max = std::max({alone ? crew : max_crew_tried, crew, min});
  const std::vector<Schedule> schedules = schedules_until_in_time(plan.tasks, crew, max);
  if (!alone) find_smallest(plan, schedules);
  plan.short_handed = lend_to(plan.tasks, crew);
  plan.schedule = plan.short_handed ? schedule(plan.tasks, crew)
                                    : schedules[static_cast<std::size_t>(crew - min)];
  put_on_the_clock(plan, job, practice);
  plan.tightest = tightest_of(plan);
  plan.late = late_tasks(plan.schedule);
  const auto larger = std::find_if(schedules.begin(), schedules.end(),
                                   [crew](const Schedule& other) { return other.crew > crew; });
  if (!plan.late.empty() && depth == CrewDepth::remedies) {
    plan.remedies = crew_remedies(
        plan.tasks, plan.schedule,
        std::span(schedules).subspan(static_cast<std::size_t>(larger - schedules.begin())));
  }
  return plan;
}

}  // namespace slabtide
