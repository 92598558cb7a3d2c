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
    if (!(task.work_person_min > 0.0) || task.least_hands < 1 ||
        task.most_hands < task.least_hands) {
      throw std::invalid_argument(fmt::format("task {}: no work or no hands", i));
    }
    for (const std::size_t before : task.after) {
      if (before >= i) throw std::invalid_argument(fmt::format("task {}: waits for {}", i, before));
    }
  }
  if (crew < least_crew(tasks)) throw std::invalid_argument("a crew smaller than a task needs");
}

}  // namespace

int least_crew(std::span<const Task> tasks) {
  int crew = 1;
  for (const Task& task : tasks) crew = std::max(crew, task.least_hands);
  return crew;
}

std::vector<Schedule> schedules_up_to(std::span<const Task> tasks, int most_crew) {
  check(tasks, most_crew);
  std::vector<Schedule> schedules;
  FoundSchedule found;
  for (int crew = least_crew(tasks); crew <= most_crew; ++crew) {
    found = search_schedule(tasks, crew, schedules.empty() ? nullptr : &found);
    schedules.push_back(found.schedule);
  }
  return schedules;
}

Schedule schedule(std::span<const Task> tasks, int crew) {
  return schedules_up_to(tasks, crew).back();
}

}  // namespace slabtide
