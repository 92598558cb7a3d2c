#include <algorithm>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "slabtide/day/crew/schedule.h"

// What must hold for any crew's day, whatever the tasks.

namespace slabtide {

namespace {

int drawn_number(int low, int high) {
  return *rc::gen::resize(100, rc::gen::inRange(low, high + 1));
}

bool one_in(int times) { return drawn_number(1, times) == 1; }

/// Tasks start within two hours, so that there are too few workers.
Task any_task(std::size_t index) {
  Task task;
  task.kind = static_cast<TaskKind>(drawn_number(0, static_cast<int>(task_kind_count) - 1));
  task.work_person_min = drawn_number(1, 90);
  task.min_hands = drawn_number(1, 3);
  task.max_hands = task.min_hands + drawn_number(0, 3);
  task.start_from_min = drawn_number(0, 120);
  task.end_from_min = task.start_from_min + drawn_number(0, 40);
  if (one_in(2)) task.start_by_min = task.start_from_min + drawn_number(-20, 90);
  if (one_in(2)) task.end_by_min = task.end_from_min + drawn_number(-20, 90);
  for (std::size_t i = 0; i < index; ++i) {
    if (one_in(5)) task.after.push_back(i);
  }
  if (!task.after.empty()) task.wait_after_min = drawn_number(0, 30);
  task.later = one_in(5);
  return task;
}

std::vector<Task> any_day() {
  std::vector<Task> tasks;
  const int count = drawn_number(0, 14);
  for (int i = 0; i < count; ++i) tasks.push_back(any_task(static_cast<std::size_t>(i)));
  return tasks;
}

void check_windows(const std::vector<Task>& tasks, const Schedule& day) {
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const Assignment& at = day.assignments[i];
    RC_ASSERT(at.start_min >= tasks[i].start_from_min);
    RC_ASSERT(at.end_min >= tasks[i].end_from_min);
    RC_ASSERT(at.hands >= tasks[i].min_hands);
    RC_ASSERT(at.hands <= tasks[i].max_hands);
    RC_ASSERT(at.hands * (at.end_min - at.start_min) >= tasks[i].work_person_min);
    for (const std::size_t before : tasks[i].after) {
      RC_ASSERT(at.start_min >= day.assignments[before].end_min + tasks[i].wait_after_min);
    }
  }
}

void check_people(const Schedule& day) {
  std::vector<std::vector<std::pair<int, int>>> busy(static_cast<std::size_t>(day.crew));
  for (const Assignment& at : day.assignments) {
    RC_ASSERT(static_cast<int>(at.who.size()) == at.hands);
    for (const int who : at.who) {
      RC_ASSERT(who >= 0);
      RC_ASSERT(who < day.crew);
      busy[static_cast<std::size_t>(who)].emplace_back(at.start_min, at.end_min);
    }
  }
  for (auto& times : busy) {
    std::sort(times.begin(), times.end());
    for (std::size_t i = 1; i < times.size(); ++i) {
      RC_ASSERT(times[i].first >= times[i - 1].second);
    }
  }
}

void check_sums(const std::vector<Task>& tasks, const Schedule& day) {
  int late_min = 0;
  int last_finish_min = 0;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const Assignment& at = day.assignments[i];
    int late = 0;
    if (tasks[i].end_by_min) late = std::max(late, at.end_min - *tasks[i].end_by_min);
    if (tasks[i].start_by_min) late = std::max(late, at.start_min - *tasks[i].start_by_min);
    RC_ASSERT(at.late_min == late);
    late_min += late;
    if (!tasks[i].later) last_finish_min = std::max(last_finish_min, at.end_min);
  }
  RC_ASSERT(day.late_min == late_min);
  RC_ASSERT(day.last_finish_min == last_finish_min);
  RC_ASSERT(day.idle_min >= 0);
}

}  // namespace

TEST_CASE("a day keeps its windows, its order and its people") {
  CHECK(rc::check("no task early, none in two places, sums add up", [] {
    const std::vector<Task> tasks = any_day();
    const int crew = min_crew(tasks) + drawn_number(0, 3);
    const Schedule day = schedule(tasks, crew);
    RC_ASSERT(day.crew == crew);
    RC_ASSERT(day.assignments.size() == tasks.size());
    check_windows(tasks, day);
    check_people(day);
    check_sums(tasks, day);
  }));
}

TEST_CASE("more hands never make a day later") {
  CHECK(rc::check("lateness does not grow with the crew", [] {
    const std::vector<Task> tasks = any_day();
    const auto days = schedules_up_to(tasks, min_crew(tasks) + 4);
    for (std::size_t i = 1; i < days.size(); ++i) {
      RC_ASSERT(days[i].crew == days[i - 1].crew + 1);
      RC_ASSERT(days[i].late_min <= days[i - 1].late_min);
    }
  }));
}

TEST_CASE("a later closing never makes a day later, the same day comes out the same") {
  CHECK(rc::check("deadlines put off by an hour", [] {
    const std::vector<Task> tasks = any_day();
    const int crew = min_crew(tasks) + 1;
    const Schedule day = schedule(tasks, crew);
    const Schedule again = schedule(tasks, crew);
    RC_ASSERT(again.late_min == day.late_min);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      RC_ASSERT(again.assignments[i].start_min == day.assignments[i].start_min);
      RC_ASSERT(again.assignments[i].who == day.assignments[i].who);
    }
    if (!day.proved) return;  // only the optimal day can guarantee it
    std::vector<Task> eased = tasks;
    for (Task& task : eased) {
      if (task.end_by_min) *task.end_by_min += 60;
    }
    const Schedule better = schedule(eased, crew);
    RC_ASSERT(!better.proved || better.late_min <= day.late_min);
  }));
}

}  // namespace slabtide
