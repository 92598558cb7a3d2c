#include "crew_clock.h"

#include <algorithm>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

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

/// How long before a task the shift began that holds it; empty if it is bound to none.
std::optional<double> in_shift_min(const CrewPlan& plan, std::size_t who, std::size_t task) {
  const int start_min = plan.schedule.assignments[task].start_min;
  for (const Shift& shift : plan.roster.hands[who].shifts) {
    if (start_min >= shift.from_min && start_min < shift.to_min) return start_min - shift.from_min;
  }
  return std::nullopt;
}

/// Groups one person's tasks into stays on site: those who would wait too long go home in between.
std::vector<CrewVisit> visits_of(std::size_t who, const CrewPlan& plan, const Job& job,
                                 const WorkHours& hours) {
  std::vector<CrewVisit> visits;
  const std::vector<std::size_t> mine = tasks_of(plan.schedule, static_cast<int>(who));
  for (const std::size_t task : mine) {
    const UtcTime start = plan.starts[task];
    const double wait_min =
        visits.empty() ? 0.0 : seconds_between(visits.back().leaves, start) / seconds_per_minute;
    const std::size_t site = plan.tasks[task].site;
    const bool elsewhere = !visits.empty() && visits.back().site != site;
    if (visits.empty() || elsewhere || wait_min > hours.go_home_min) {
      // Time to check forms, base and tools is needed before the first work only.
      const double usual_min = visits.empty() ? job.crew.arrive_before_min : 0.0;
      const double before_min =
          std::min(usual_min, in_shift_min(plan, who, task).value_or(usual_min));
      visits.push_back({after_seconds(start, -before_min * seconds_per_minute), {}, {}, {}, site});
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

}  // namespace

void put_on_the_clock(CrewPlan& plan, const Job& job, const WorkHours& hours) {
  for (const Assignment& at : plan.schedule.assignments) {
    plan.starts.push_back(after_seconds(job.pour.start, at.start_min * seconds_per_minute));
    plan.ends.push_back(after_seconds(job.pour.start, at.end_min * seconds_per_minute));
  }
  for (std::size_t who = 0; who < plan.roster.hands.size(); ++who) {
    plan.people.push_back({plan.roster.hands[who].name, visits_of(who, plan, job, hours)});
  }
  find_late(plan);
}

void find_late(CrewPlan& plan) {
  plan.tightest = tightest_of(plan);
  plan.late = late_tasks(plan.schedule);
}

}  // namespace slabtide
