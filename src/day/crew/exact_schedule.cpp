#include "exact_schedule.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace slabtide {

namespace {

/// Late minutes and last finish: the search is exact for these two.
using Goal = std::pair<int, int>;

class BranchAndBound {
 public:
  BranchAndBound(std::span<const Task> tasks, int crew, const Score& to_better, int max_nodes)
      : tasks_(tasks),
        crew_(crew),
        goal_(to_better.late_min, to_better.last_finish_min),
        nodes_left_(max_nodes),
        placed_(tasks.size()),
        is_placed_(tasks.size(), false),
        end_bound_(tasks.size()) {}

  ExactSearch run() {
    descend(CrewLoad(crew_), 0, {0, 0}, std::numeric_limits<int>::min(), tasks_.size());
    result_.whole = nodes_left_ > 0;
    return std::move(result_);
  }

 private:
  /// A task about to be placed.
  struct Branch {
    std::size_t task = 0;
    Assignment at;
  };

  void descend(const CrewLoad& load, std::size_t count, Goal so_far, int last_start_min,
               std::size_t last_task) {
    if (count == tasks_.size()) {
      goal_ = so_far;
      result_.better = placed_;
      return;
    }
    if (--nodes_left_ <= 0 || bound(so_far, last_start_min) >= goal_) return;
    for (const Branch& branch : branches(load, last_start_min, last_task)) {
      const Task& task = tasks_[branch.task];
      Goal next{so_far.first + branch.at.late_min,
                task.later ? so_far.second : std::max(so_far.second, branch.at.end_min)};
      if (next >= goal_) continue;
      CrewLoad taken = load;
      taken.take(branch.at.start_min, branch.at.end_min, branch.at.hands);
      placed_[branch.task] = branch.at;
      is_placed_[branch.task] = true;
      descend(taken, count + 1, next, branch.at.start_min, branch.task);
      is_placed_[branch.task] = false;
      if (nodes_left_ <= 0) return;
    }
  }

  bool waits(const Task& task) const {
    return std::any_of(task.after.begin(), task.after.end(),
                       [this](std::size_t before) { return !is_placed_[before]; });
  }

  /// What can come next, the most urgent first. Tasks that start together are tried only in the
  /// order of their indices, because other orders give the same schedule.
  std::vector<Branch> branches(const CrewLoad& load, int last_start_min,
                               std::size_t last_task) const {
    std::vector<Branch> found;
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      const Task& task = tasks_[i];
      if (is_placed_[i] || waits(task)) continue;
      int ready_min = task.start_from_min;
      for (const std::size_t before : task.after) {
        ready_min = std::max(ready_min, placed_[before].end_min + task.wait_after_min);
      }
      for (int hands = task.min_hands; hands <= std::min(task.max_hands, crew_); ++hands) {
        const Assignment at = fit(load, task, ready_min, hands);
        const bool twice =
            at.start_min == last_start_min && i < last_task && last_task < tasks_.size();
        if (at.start_min >= last_start_min && !twice) found.push_back({i, at});
      }
    }
    std::stable_sort(found.begin(), found.end(), [](const Branch& a, const Branch& b) {
      return a.at.start_min < b.at.start_min;
    });
    return found;
  }

  static Assignment fit(const CrewLoad& load, const Task& task, int ready_min, int hands) {
    Assignment at;
    at.hands = hands;
    const int duration_min = task.duration_min(hands);
    at.start_min = load.first_free(std::max(ready_min, task.from_min(hands)), duration_min, hands);
    at.end_min = at.start_min + duration_min;
    at.late_min = task.late_min(at.start_min, at.end_min);
    return at;
  }

  /// A lower bound for all schedules that continue what is placed so far.
  Goal bound(Goal so_far, int last_start_min) {
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      const Task& task = tasks_[i];
      if (is_placed_[i]) {
        end_bound_[i] = placed_[i].end_min;
        continue;
      }
      int ready_min = std::max(task.start_from_min, last_start_min);
      for (const std::size_t before : task.after) {
        ready_min = std::max(ready_min, end_bound_[before] + task.wait_after_min);
      }
      const SoonestTask soonest = soonest_of(task, ready_min, crew_);
      end_bound_[i] = soonest.end_min;
      so_far.first += soonest.late_min;
      if (!task.later) so_far.second = std::max(so_far.second, soonest.end_min);
    }
    return so_far;
  }

  std::span<const Task> tasks_;
  int crew_;
  Goal goal_;
  int nodes_left_;
  std::vector<Assignment> placed_;
  std::vector<bool> is_placed_;
  std::vector<int> end_bound_;
  ExactSearch result_;
};

}  // namespace

ExactSearch search_exactly(std::span<const Task> tasks, int crew, const Score& to_better,
                           int max_nodes) {
  return BranchAndBound(tasks, crew, to_better, max_nodes).run();
}

}  // namespace slabtide
