#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "crew_load.h"
#include "hand_load.h"
#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

// Schedules made from a list of tasks: the building blocks of the search.

namespace slabtide {

/// The order in which tasks are placed, and with how many workers; 0 means the number that finishes
/// it first among those the task can use.
struct TaskList {
  std::vector<std::size_t> order;
  std::vector<int> hands;  ///< in the order of the tasks
};

/// What is asked of a schedule first, in this order.
struct Goal {
  int late_min = 0;
  int last_finish_min = 0;

  friend auto operator<=>(const Goal&, const Goal&) = default;
};
/// Every schedule is as good as this.
inline constexpr Goal any_goal{std::numeric_limits<int>::max(), std::numeric_limits<int>::max()};

/// What schedules are compared by, in this order.
struct Score {
  Goal goal;
  int idle_min = 0;

  friend auto operator<=>(const Score&, const Score&) = default;
};

/// Places the tasks of one list after another at their first free time. Lists with the same
/// beginning share the work: only what follows the first difference is placed again.
class TaskPlacer {
 public:
  /// Refers to the roster.
  TaskPlacer(std::span<const Task> tasks, const Roster& roster);

  /// The schedule that the list gives, without idle time, and without assignment to individuals if
  /// the roster is a count. Empty if it is worse than `worst`; placing stops as soon as it is sure
  /// to be later.
  std::optional<Schedule> times_of(const TaskList& list, const Goal& worst);

  /// Tasks placed so far over all lists.
  std::size_t placings() const { return placings_; }
  /// The amount of work done, the same on any machine: the placings, or more where hands who are
  /// many or there for short hours had to be looked at more often than usual.
  std::size_t work() const;

 private:
  /// A task's duration and earliest start with a given number of workers.
  struct Effort {
    int duration_min = 0;
    int from_min = 0;
  };
  /// A placed task, and the number of workers that the list asked for.
  struct Placing {
    std::size_t task = 0;
    int asked = 0;
  };
  /// Where a task was placed.
  struct Place {
    int hands = 0;
    int start_min = 0;
    int end_min = 0;
    int late_min = 0;
    HandSet who = 0;  ///< empty if the roster is a count
  };

  int ready_min(std::size_t task) const;
  Place fit(std::size_t task, int ready_min, int hands) const;
  Place fit_hands(std::size_t task, int ready_min, int hands) const;
  /// The most workers that the task can get.
  int most_hands(std::size_t task) const;
  void take(const Place& place, std::size_t task);
  void place(std::size_t task, int hands);
  void take_back_last();
  /// Removes everything after the point where this list differs from the previous one.
  void keep_common(const TaskList& list);
  /// Of all placed tasks of the finishing day; 0 if there are none.
  int last_finish_min() const;
  Schedule placed_schedule() const;

  std::span<const Task> tasks_;
  int crew_;
  CrewLoad load_;
  std::optional<HandLoad> hand_load_;  ///< unless the roster is a count
  std::vector<int> able_;              ///< of the roster, for each task
  int max_hands_;                      ///< that any task can use
  std::vector<Effort> efforts_;        ///< for each task, for 1 to `max_hands_` workers
  std::vector<int> min_late_min_;      ///< lower bound for each task, whatever the list
  std::vector<Place> placed_;          ///< in the order of the tasks
  std::vector<Placing> done_;          ///< in the order of the list
  int certain_late_min_ = 0;           ///< of the placed tasks, plus the lower bounds of the others
  std::size_t placings_ = 0;
};

/// The schedule that one list gives, as `TaskPlacer::times_of` does.
Schedule times_of(std::span<const Task> tasks, const Roster& roster, const TaskList& list);

/// The sums over assignments that have workers and times.
Schedule summed(std::span<const Task> tasks, int crew, std::vector<Assignment> assignments);

Goal goal_of(const Schedule& schedule);
Score score_of(const Schedule& schedule);

/// The least lateness and the earliest end of a task that may start at `ready_min`, each with the
/// number of workers best for it, so the two may belong to different numbers. `fastest` as
/// Roster::fastest; hours and travel are left out of account.
struct SoonestTask {
  int late_min = std::numeric_limits<int>::max();
  int end_min = std::numeric_limits<int>::max();
};
SoonestTask soonest_of(const Task& task, int ready_min, std::span<const double> fastest);

/// A lower bound for the lateness of each task with this crew, whatever the order.
std::vector<int> min_late_min(std::span<const Task> tasks, const Roster& roster);

/// No schedule of this crew can be better.
Goal lower_bound(std::span<const Task> tasks, const Roster& roster);

}  // namespace slabtide
