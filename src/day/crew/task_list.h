#pragma once

#include <limits>
#include <span>
#include <vector>

#include "crew_load.h"
#include "slabtide/day/crew/schedule.h"

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

/// Puts one task after others at its first free place.
class TaskPlacer {
 public:
  TaskPlacer(std::span<const Task> tasks, int crew);

  /// At its first free place after those it waits for, which are placed; `hands` as in
  /// TaskList.
  void place(std::size_t task, int hands);
  std::vector<Assignment> take_placed() { return std::move(placed_); }

 private:
  int ready_min(std::size_t task) const;
  Assignment fit(std::size_t task, int hands) const;

  std::span<const Task> tasks_;
  int crew_;
  CrewLoad load_;
  std::vector<Assignment> placed_;
};

/// The schedule that a list makes, but for who does what and the idle time.
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

/// No schedule of this crew, however clever, does better (idle not bounded).
Score lower_bound(std::span<const Task> tasks, int crew);

}  // namespace slabtide
