#include "task_list.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace slabtide {

namespace {

/// A bound: work that may not begin before some time takes the whole crew, which does as much as
/// `pace` usual hands, at least this long from then.
int finish_by_work_min(std::span<const Task> tasks, double pace) {
  int finish_min = 0;
  for (const Task& first : tasks) {
    if (first.later) continue;
    double work_person_min = 0.0;
    for (const Task& task : tasks) {
      if (!task.later && task.start_from_min >= first.start_from_min) {
        work_person_min += task.work_person_min;
      }
    }
    finish_min = std::max(finish_min, first.start_from_min + whole_minutes(work_person_min / pace));
  }
  return finish_min;
}

/// The largest number of workers that any task can use.
int max_hands(std::span<const Task> tasks, int crew) {
  int max = 1;
  for (const Task& task : tasks) max = std::max({max, task.max_hands, task.min_hands});
  return std::min(max, crew);
}

}  // namespace

TaskPlacer::TaskPlacer(std::span<const Task> tasks, const Roster& roster)
    : tasks_(tasks),
      crew_(roster.size()),
      load_(crew_),
      max_hands_(max_hands(tasks, crew_)),
      min_late_min_(min_late_min(tasks, roster)),
      placed_(tasks.size()),
      certain_late_min_(std::accumulate(min_late_min_.begin(), min_late_min_.end(), 0)) {
  if (!roster.is_count()) {
    hand_load_.emplace(roster);
    for (const Task& task : tasks) able_.push_back(roster.able(task));
    return;
  }
  for (const Task& task : tasks) {
    for (int hands = 1; hands <= max_hands_; ++hands) {
      efforts_.push_back({task.duration_min(hands), task.from_min(hands)});
    }
  }
}

std::size_t TaskPlacer::work() const {
  // Eight hands, each looked at some three times (ours).
  constexpr std::size_t looks_per_placing = 24;
  return hand_load_ ? std::max(placings_, hand_load_->looks() / looks_per_placing) : placings_;
}

int TaskPlacer::ready_min(std::size_t task) const {
  int ready_min = tasks_[task].start_from_min;
  for (const std::size_t before : tasks_[task].after) {
    ready_min = std::max(ready_min, placed_[before].end_min + tasks_[task].wait_after_min);
  }
  return ready_min;
}

TaskPlacer::Place TaskPlacer::fit(std::size_t task, int ready_min, int hands) const {
  if (hand_load_) return fit_hands(task, ready_min, hands);
  const auto stride = static_cast<std::size_t>(max_hands_);
  const Effort& effort = efforts_[task * stride + static_cast<std::size_t>(hands) - 1];
  Place place;
  place.hands = hands;
  place.start_min =
      load_.first_free(std::max(ready_min, effort.from_min), effort.duration_min, hands);
  place.end_min = place.start_min + effort.duration_min;
  place.late_min = tasks_[task].late_min(place.start_min, place.end_min);
  return place;
}

TaskPlacer::Place TaskPlacer::fit_hands(std::size_t task, int ready_min, int hands) const {
  Place place;
  place.hands = std::min(hands, able_[task]);
  const HandLoad::Place found = hand_load_->first_place(tasks_[task], ready_min, place.hands);
  place.start_min = found.start_min;
  place.end_min = found.end_min;
  place.late_min = tasks_[task].late_min(place.start_min, place.end_min);
  place.who = found.who;
  return place;
}

int TaskPlacer::most_hands(std::size_t task) const {
  const int most = std::min(tasks_[task].max_hands, crew_);
  return hand_load_ ? std::min(most, able_[task]) : most;
}

void TaskPlacer::take(const Place& place, std::size_t task) {
  if (hand_load_) {
    hand_load_->take({place.who, place.start_min, place.end_min}, tasks_[task].site);
  } else {
    load_.take(place.start_min, place.end_min, place.hands);
  }
}

void TaskPlacer::place(std::size_t index, int hands) {
  const Task& task = tasks_[index];
  const int ready = ready_min(index);
  Place best = fit(index, ready, hands > 0 ? std::min(hands, max_hands_) : task.min_hands);
  const int max = hands > 0 ? 0 : most_hands(index);
  for (int more = task.min_hands + 1; more <= max; ++more) {
    const Place fitted = fit(index, ready, more);
    if (fitted.end_min < best.end_min) best = fitted;
  }
  take(best, index);
  placed_[index] = best;
  done_.push_back({index, hands});
  certain_late_min_ += best.late_min - min_late_min_[index];
  ++placings_;
}

void TaskPlacer::take_back_last() {
  const std::size_t task = done_.back().task;
  const Place& place = placed_[task];
  if (hand_load_) {
    hand_load_->give_back({place.who, place.start_min, place.end_min});
  } else {
    load_.give_back(place.start_min, place.end_min, place.hands);
  }
  certain_late_min_ -= place.late_min - min_late_min_[task];
  done_.pop_back();
}

void TaskPlacer::keep_common(const TaskList& list) {
  const auto differs = [&](const Placing& placing) {
    const auto at = static_cast<std::size_t>(&placing - done_.data());
    return placing.task != list.order[at] || placing.asked != list.hands[placing.task];
  };
  const auto first = std::find_if(done_.begin(), done_.end(), differs);
  const auto common = static_cast<std::size_t>(first - done_.begin());
  while (done_.size() > common) take_back_last();
}

std::optional<Schedule> TaskPlacer::times_of(const TaskList& list, const Goal& worst) {
  keep_common(list);
  while (certain_late_min_ <= worst.late_min && done_.size() < list.order.size()) {
    const std::size_t task = list.order[done_.size()];
    place(task, list.hands[task]);
  }
  if (Goal{certain_late_min_, last_finish_min()} > worst) return std::nullopt;
  return placed_schedule();
}

int TaskPlacer::last_finish_min() const {
  int last_min = 0;
  for (const Placing& placing : done_) {
    if (!tasks_[placing.task].later) last_min = std::max(last_min, placed_[placing.task].end_min);
  }
  return last_min;
}

Schedule TaskPlacer::placed_schedule() const {
  std::vector<Assignment> assignments;
  assignments.reserve(placed_.size());
  for (const Place& place : placed_) {
    assignments.push_back(
        {place.hands, place.start_min, place.end_min, place.late_min, members_of(place.who)});
  }
  return summed(tasks_, crew_, std::move(assignments));
}

Schedule summed(std::span<const Task> tasks, int crew, std::vector<Assignment> assignments) {
  Schedule schedule;
  schedule.crew = crew;
  schedule.assignments = std::move(assignments);
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    schedule.late_min += schedule.assignments[i].late_min;
    if (tasks[i].later) continue;
    schedule.last_finish_min = std::max(schedule.last_finish_min, schedule.assignments[i].end_min);
  }
  return schedule;
}

Schedule times_of(std::span<const Task> tasks, const Roster& roster, const TaskList& list) {
  return *TaskPlacer(tasks, roster).times_of(list, any_goal);
}

Goal goal_of(const Schedule& schedule) { return {schedule.late_min, schedule.last_finish_min}; }

Score score_of(const Schedule& schedule) { return {goal_of(schedule), schedule.idle_min}; }

SoonestTask soonest_of(const Task& task, int ready_min, std::span<const double> fastest) {
  SoonestTask best;
  const int max = std::min(task.max_hands, static_cast<int>(fastest.size()));
  for (int hands = task.min_hands; hands <= max; ++hands) {
    const double pace = fastest[static_cast<std::size_t>(hands) - 1];
    const int start_min = std::max(ready_min, task.from_min(pace));
    const int end_min = start_min + task.duration_min(pace);
    best.late_min = std::min(best.late_min, task.late_min(start_min, end_min));
    best.end_min = std::min(best.end_min, end_min);
  }
  return best;
}

namespace {

/// Each task as soon as its window and the tasks before it allow, as if it were the only work on
/// site.
std::vector<SoonestTask> soonest_of(std::span<const Task> tasks, const Roster& roster) {
  const std::vector<double> fastest = roster.fastest();
  std::vector<SoonestTask> soonest;
  for (const Task& task : tasks) {
    int ready_min = task.start_from_min;
    for (const std::size_t before : task.after) {
      // The index of an earlier task, which is already in the list.
      // cppcheck-suppress containerOutOfBounds
      ready_min = std::max(ready_min, soonest[before].end_min + task.wait_after_min);
    }
    soonest.push_back(soonest_of(task, ready_min, fastest));
  }
  return soonest;
}

}  // namespace

std::vector<int> min_late_min(std::span<const Task> tasks, const Roster& roster) {
  std::vector<int> late_min;
  for (const SoonestTask& soonest : soonest_of(tasks, roster)) late_min.push_back(soonest.late_min);
  return late_min;
}

Goal lower_bound(std::span<const Task> tasks, const Roster& roster) {
  Goal bound;
  bound.last_finish_min = finish_by_work_min(tasks, roster.fastest().back());
  const std::vector<SoonestTask> soonest = soonest_of(tasks, roster);
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    bound.late_min += soonest[i].late_min;
    if (tasks[i].later) continue;
    bound.last_finish_min = std::max(bound.last_finish_min, soonest[i].end_min);
  }
  return bound;
}

}  // namespace slabtide
