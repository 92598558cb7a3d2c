#include "exact_schedule.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace slabtide {

namespace {

/// A crew that is a count.
class CountedCrew {
 public:
  explicit CountedCrew(const Roster& roster) : crew_(roster.size()), load_(crew_) {}

  /// Calls `use` with every way to do the task from `ready_min` on.
  template <class Use>
  void each_way(const Task& task, int ready_min, Use use) const {
    for (int hands = task.min_hands; hands <= std::min(task.max_hands, crew_); ++hands) {
      Assignment at;
      at.hands = hands;
      const int duration_min = task.duration_min(hands);
      const int from_min = std::max(ready_min, task.from_min(hands));
      at.start_min = load_.first_free(from_min, duration_min, hands);
      at.end_min = at.start_min + duration_min;
      use(std::move(at));
    }
  }
  void take(const Assignment& at, const Task&) { load_.take(at.start_min, at.end_min, at.hands); }
  void give_back(const Assignment& at) { load_.give_back(at.start_min, at.end_min, at.hands); }

 private:
  int crew_;
  CrewLoad load_;
};

/// A crew of which it matters who does what.
class NamedCrew {
 public:
  explicit NamedCrew(const Roster& roster) : roster_(roster), load_(roster) {}

  template <class Use>
  void each_way(const Task& task, int ready_min, Use use) const {
    for (HandSet who = 1; who < HandSet{1} << roster_.hands.size(); ++who) {
      Assignment at;
      at.who = members_of(who);
      at.hands = static_cast<int>(at.who.size());
      const bool able = std::all_of(at.who.begin(), at.who.end(), [&](int one) {
        return roster_.hands[static_cast<std::size_t>(one)].can_do(task);
      });
      if (!able || at.hands < task.min_hands || at.hands > task.max_hands) continue;
      const HandLoad::Place place = load_.first_place_of(task, ready_min, who);
      at.start_min = place.start_min;
      at.end_min = place.end_min;
      use(std::move(at));
    }
  }
  void take(const Assignment& at, const Task& task) { load_.take(place_of(at), task.site); }
  void give_back(const Assignment& at) { load_.give_back(place_of(at)); }

 private:
  static HandLoad::Place place_of(const Assignment& at) {
    HandSet who = 0;
    for (const int one : at.who) who |= HandSet{1} << static_cast<unsigned>(one);
    return {who, at.start_min, at.end_min};
  }

  const Roster& roster_;
  HandLoad load_;
};

template <class Crew>
class BranchAndBound {
 public:
  BranchAndBound(std::span<const Task> tasks, const Roster& roster, const Goal& to_better,
                 int max_nodes)
      : tasks_(tasks),
        crew_(roster),
        fastest_(roster.fastest()),
        goal_(to_better),
        nodes_left_(max_nodes),
        placed_(tasks.size()),
        is_placed_(tasks.size(), false),
        end_bound_(tasks.size()) {}

  ExactSearch run() {
    descend(0, {0, 0}, std::numeric_limits<int>::min(), tasks_.size());
    result_.whole = nodes_left_ > 0;
    return std::move(result_);
  }

 private:
  /// A task about to be placed.
  struct Branch {
    std::size_t task = 0;
    Assignment at;
  };

  void descend(std::size_t count, Goal so_far, int last_start_min, std::size_t last_task) {
    if (count == tasks_.size()) {
      goal_ = so_far;
      result_.better = placed_;
      return;
    }
    if (--nodes_left_ <= 0 || bound(so_far, last_start_min) >= goal_) return;
    for (const Branch& branch : branches(last_start_min, last_task)) {
      const Task& task = tasks_[branch.task];
      Goal next{so_far.late_min + branch.at.late_min,
                task.later ? so_far.last_finish_min
                           : std::max(so_far.last_finish_min, branch.at.end_min)};
      if (next >= goal_) continue;
      crew_.take(branch.at, task);
      placed_[branch.task] = branch.at;
      is_placed_[branch.task] = true;
      descend(count + 1, next, branch.at.start_min, branch.task);
      is_placed_[branch.task] = false;
      crew_.give_back(branch.at);
      if (nodes_left_ <= 0) return;
    }
  }

  bool waits(const Task& task) const {
    return std::any_of(task.after.begin(), task.after.end(),
                       [this](std::size_t before) { return !is_placed_[before]; });
  }

  /// What can come next, the most urgent first. Tasks that start together are tried only in the
  /// order of their indices, because other orders give the same schedule.
  std::vector<Branch> branches(int last_start_min, std::size_t last_task) const {
    std::vector<Branch> found;
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      const Task& task = tasks_[i];
      if (is_placed_[i] || waits(task)) continue;
      int ready_min = task.start_from_min;
      for (const std::size_t before : task.after) {
        ready_min = std::max(ready_min, placed_[before].end_min + task.wait_after_min);
      }
      crew_.each_way(task, ready_min, [&](Assignment at) {
        at.late_min = task.late_min(at.start_min, at.end_min);
        const bool twice =
            at.start_min == last_start_min && i < last_task && last_task < tasks_.size();
        if (at.start_min >= last_start_min && !twice) found.push_back({i, std::move(at)});
      });
    }
    std::stable_sort(found.begin(), found.end(), [](const Branch& a, const Branch& b) {
      return a.at.start_min < b.at.start_min;
    });
    return found;
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
      const SoonestTask soonest = soonest_of(task, ready_min, fastest_);
      end_bound_[i] = soonest.end_min;
      so_far.late_min += soonest.late_min;
      if (!task.later) so_far.last_finish_min = std::max(so_far.last_finish_min, soonest.end_min);
    }
    return so_far;
  }

  std::span<const Task> tasks_;
  Crew crew_;
  std::vector<double> fastest_;
  Goal goal_;
  int nodes_left_;
  std::vector<Assignment> placed_;
  std::vector<bool> is_placed_;
  std::vector<int> end_bound_;
  ExactSearch result_;
};

}  // namespace

ExactSearch search_exactly(std::span<const Task> tasks, const Roster& roster, const Goal& to_better,
                           int max_nodes) {
  if (roster.is_count()) {
    return BranchAndBound<CountedCrew>(tasks, roster, to_better, max_nodes).run();
  }
  if (roster.size() > max_hands_exactly) return {std::nullopt, false};
  const int groups = 1 << roster.size();
  return BranchAndBound<NamedCrew>(tasks, roster, to_better, max_nodes / groups).run();
}

}  // namespace slabtide
