#pragma once

#include <limits>
#include <optional>
#include <span>
#include <vector>

#include "crew_load.h"
#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

// Schedules made from a list: the parts that the search is put together from.

namespace slabtide {

/// In which order tasks take their place, and with how many hands; 0: the number among those
/// a task can use that ends it first.
struct TaskList {
  std::vector<std::size_t> order;
  std::vector<int> hands;  ///< in the order of the tasks
};

/// What is compared, in this order.
struct Score {
  int late_min = 0;
  int last_finish_min = 0;
  int idle_min = 0;

  friend auto operator<=>(const Score&, const Score&) = default;
};

/// Puts the tasks of one list after another at their first free places. Lists that begin alike
/// share the work: only what follows the first difference is placed anew.
class TaskPlacer {
 public:
  TaskPlacer(std::span<const Task> tasks, int crew);

  /// The schedule that the list makes, but for who does what and the idle time. Nothing where
  /// it is late by more than `max_late_min`; it is given up as soon as that is certain.
  std::optional<Schedule> times_of(const TaskList& list, int max_late_min);

  /// Tasks put in a place so far, over all lists: the work done, the same on any machine.
  std::size_t placings() const { return placings_; }

 private:
  /// What a task takes with a number of hands.
  struct Effort {
    int duration_min = 0;
    int from_min = 0;
  };
  /// A task in its place, and the hands the list asked for.
  struct Placing {
    std::size_t task = 0;
    int asked = 0;
  };
  /// Where a task comes to stand.
  struct Place {
    int hands = 0;
    int start_min = 0;
    int end_min = 0;
    int late_min = 0;
  };

  int ready_min(std::size_t task) const;
  Place fit(std::size_t task, int ready_min, int hands) const;
  void place(std::size_t task, int hands);
  void take_back_last();
  /// Takes back all that follows where this list parts from the one before.
  void keep_common(const TaskList& list);
  Schedule placed_schedule() const;

  std::span<const Task> tasks_;
  int crew_;
  CrewLoad load_;
  int max_hands_;                  ///< that any task has use for
  std::vector<Effort> efforts_;    ///< task by task, for 1 to `max_hands_` hands
  std::vector<int> min_late_min_;  ///< by each task at least, whatever the list
  std::vector<Place> placed_;      ///< in the order of the tasks
  std::vector<Placing> done_;      ///< in the order of the list
  int certain_late_min_ = 0;       ///< by what is placed, and at least by the rest
  std::size_t placings_ = 0;
};

/// The schedule that one list makes, but for who does what and the idle time.
Schedule times_of(std::span<const Task> tasks, int crew, const TaskList& list);

/// The sums over assignments that have hands and times.
Schedule summed(std::span<const Task> tasks, int crew, std::vector<Assignment> assignments);

/// Says who does what, and sums up the idle time.
void deal_out(std::span<const Task> tasks, Schedule& schedule);

Score score_of(const Schedule& schedule);

/// Least lateness and earliest end of a task that may start at `ready_min`, each on the number
/// of hands that suits it: neither need go with the other.
struct SoonestTask {
  int late_min = std::numeric_limits<int>::max();
  int end_min = std::numeric_limits<int>::max();
};
SoonestTask soonest_of(const Task& task, int ready_min, int crew);

/// What each task is late by at least with this crew, whatever the order.
std::vector<int> min_late_min(std::span<const Task> tasks, int crew);

/// No schedule of this crew, however clever, does better (idle not bounded).
Score lower_bound(std::span<const Task> tasks, int crew);

}  // namespace slabtide
