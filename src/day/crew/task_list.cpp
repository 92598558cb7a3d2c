#include "task_list.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace slabtide {

namespace {

/// One of the crew while the day is dealt out.
struct Hand {
  int free_from_min = std::numeric_limits<int>::min();
  bool has_begun = false;  ///< with the finishing day
};

/// Deals tasks out by their start to those who came free last: the crew stays small and its
/// waits short.
class Dealer {
 public:
  Dealer(std::span<const Task> tasks, Schedule& schedule)
      : tasks_(tasks), schedule_(schedule), crew_(static_cast<std::size_t>(schedule.crew)) {}

  void deal() {
    std::vector<std::size_t> by_start(tasks_.size());
    std::iota(by_start.begin(), by_start.end(), std::size_t{0});
    std::stable_sort(by_start.begin(), by_start.end(), [this](std::size_t a, std::size_t b) {
      return schedule_.assignments[a].start_min < schedule_.assignments[b].start_min;
    });
    for (const std::size_t task : by_start) give(task);
  }

 private:
  void give(std::size_t task) {
    Assignment& assignment = schedule_.assignments[task];
    while (static_cast<int>(assignment.who.size()) < assignment.hands) {
      const std::size_t who = next_free(assignment.start_min);
      Hand& hand = crew_[who];
      if (!tasks_[task].later) {
        if (hand.has_begun) schedule_.idle_min += assignment.start_min - hand.free_from_min;
        hand.has_begun = true;
      }
      hand.free_from_min = assignment.end_min;
      assignment.who.push_back(static_cast<int>(who));
    }
    std::sort(assignment.who.begin(), assignment.who.end());
  }

  /// Of those who are free, the one who came free last. There is one: the load was kept.
  std::size_t next_free(int at_min) const {
    std::size_t best = crew_.size();
    for (std::size_t i = 0; i < crew_.size(); ++i) {
      if (crew_[i].free_from_min > at_min) continue;
      if (best == crew_.size() || crew_[i].free_from_min > crew_[best].free_from_min) best = i;
    }
    return best;
  }

  std::span<const Task> tasks_;
  Schedule& schedule_;
  std::vector<Hand> crew_;
};

/// Work that may not begin before some hour takes the whole crew at least so long from then.
int finish_by_work_min(std::span<const Task> tasks, int crew) {
  int finish_min = 0;
  for (const Task& first : tasks) {
    if (first.later) continue;
    double work_person_min = 0.0;
    for (const Task& task : tasks) {
      if (!task.later && task.start_from_min >= first.start_from_min) {
        work_person_min += task.work_person_min;
      }
    }
    finish_min = std::max(finish_min, first.start_from_min + whole_minutes(work_person_min / crew));
  }
  return finish_min;
}

}  // namespace

TaskPlacer::TaskPlacer(std::span<const Task> tasks, int crew)
    : tasks_(tasks), crew_(crew), load_(crew), placed_(tasks.size()) {}

int TaskPlacer::ready_min(std::size_t task) const {
  int ready_min = tasks_[task].start_from_min;
  for (const std::size_t before : tasks_[task].after) {
    ready_min = std::max(ready_min, placed_[before].end_min + tasks_[task].wait_after_min);
  }
  return ready_min;
}

Assignment TaskPlacer::fit(std::size_t index, int hands) const {
  const Task& task = tasks_[index];
  Assignment fitted;
  fitted.hands = hands;
  const int duration_min = task.duration_min(hands);
  fitted.start_min =
      load_.first_free(std::max(ready_min(index), task.from_min(hands)), duration_min, hands);
  fitted.end_min = fitted.start_min + duration_min;
  fitted.late_min = task.late_min(fitted.start_min, fitted.end_min);
  return fitted;
}

void TaskPlacer::place(std::size_t index, int hands) {
  const Task& task = tasks_[index];
  Assignment best;
  if (hands > 0) {
    best = fit(index, std::min(hands, crew_));
  } else {
    best = fit(index, task.min_hands);
    for (int more = task.min_hands + 1; more <= std::min(task.max_hands, crew_); ++more) {
      const Assignment fitted = fit(index, more);
      if (fitted.end_min < best.end_min) best = fitted;
    }
  }
  load_.take(best.start_min, best.end_min, best.hands);
  placed_[index] = std::move(best);
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

void deal_out(std::span<const Task> tasks, Schedule& schedule) { Dealer(tasks, schedule).deal(); }

Schedule times_of(std::span<const Task> tasks, int crew, const TaskList& list) {
  TaskPlacer placer(tasks, crew);
  for (const std::size_t task : list.order) placer.place(task, list.hands[task]);
  return summed(tasks, crew, placer.take_placed());
}

Score score_of(const Schedule& schedule) {
  return {schedule.late_min, schedule.last_finish_min, schedule.idle_min};
}

SoonestTask soonest_of(const Task& task, int ready_min, int crew) {
  SoonestTask best;
  for (int hands = task.min_hands; hands <= std::min(task.max_hands, crew); ++hands) {
    const int start_min = std::max(ready_min, task.from_min(hands));
    const int end_min = start_min + task.duration_min(hands);
    best.late_min = std::min(best.late_min, task.late_min(start_min, end_min));
    best.end_min = std::min(best.end_min, end_min);
  }
  return best;
}

Score lower_bound(std::span<const Task> tasks, int crew) {
  Score bound;
  bound.last_finish_min = finish_by_work_min(tasks, crew);
  std::vector<int> end_min(tasks.size());
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    int ready_min = tasks[i].start_from_min;
    for (const std::size_t before : tasks[i].after) {
      ready_min = std::max(ready_min, end_min[before] + tasks[i].wait_after_min);
    }
    const SoonestTask best = soonest_of(tasks[i], ready_min, crew);
    end_min[i] = best.end_min;
    bound.late_min += best.late_min;
    if (!tasks[i].later) bound.last_finish_min = std::max(bound.last_finish_min, best.end_min);
  }
  return bound;
}

}  // namespace slabtide
