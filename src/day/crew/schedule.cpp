#include "slabtide/day/crew/schedule.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "schedule_search.h"

namespace slabtide {

namespace {

void check(std::span<const Task> tasks, int crew) {
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const Task& task = tasks[i];
    if (!(task.work_person_min > 0.0) || task.min_hands < 1 || task.max_hands < task.min_hands) {
      throw std::invalid_argument(fmt::format("task {}: no work or no hands", i));
    }
    for (const std::size_t before : task.after) {
      if (before >= i) throw std::invalid_argument(fmt::format("task {}: waits for {}", i, before));
    }
  }
  if (crew < min_crew(tasks)) throw std::invalid_argument("a crew smaller than a task needs");
}

}  // namespace

int min_crew(std::span<const Task> tasks) {
  int crew = 1;
  for (const Task& task : tasks) crew = std::max(crew, task.min_hands);
  return crew;
}

std::vector<Schedule> schedules_up_to(std::span<const Task> tasks, int max_crew) {
  return schedules_until_in_time(tasks, max_crew, max_crew);
}

std::vector<Schedule> schedules_until_in_time(std::span<const Task> tasks, int own_crew,
                                              int max_crew) {
  check(tasks, max_crew);
  std::vector<Schedule> schedules;
  FoundSchedule found;
  for (int crew = min_crew(tasks); crew <= max_crew; ++crew) {
    found = search_schedule(tasks, usual_roster(crew), schedules.empty() ? nullptr : &found);
    schedules.push_back(found.schedule);
    if (crew >= own_crew && found.schedule.late_min == 0) break;
  }
  return schedules;
}

Schedule schedule(std::span<const Task> tasks, int crew) {
  return schedules_up_to(tasks, crew).back();
}

std::vector<Schedule> schedules_until_in_time(std::span<const Task> tasks, const Roster& roster,
                                              int max_crew) {
  check(tasks, roster.size());
  for (const Task& task : tasks) {
    if (roster.able(task) < task.min_hands) throw std::invalid_argument("too few can do a task");
  }
  if (roster.is_count()) return {schedule(tasks, roster.size())};
  std::vector<Schedule> schedules;
  FoundSchedule found;
  for (int crew = roster.size(); crew <= std::max(max_crew, roster.size()); ++crew) {
    found = search_schedule(tasks, enlarged(roster, crew), schedules.empty() ? nullptr : &found);
    schedules.push_back(found.schedule);
    if (found.schedule.late_min == 0) break;
  }
  return schedules;
}

}  // namespace slabtide
