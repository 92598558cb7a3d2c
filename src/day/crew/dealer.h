#pragma once

#include <cstddef>
#include <span>
#include <utility>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// Gives the tasks of a schedule, whose times and numbers stand, to individuals: in order of start
/// to those who became free last, which keeps the crew small and its waits short. A schedule whose
/// individuals already stand is left as it is. The search asks this of one schedule after another
/// and takes few, so that nothing is kept of the others.
class Dealer {
 public:
  /// Refers to the tasks.
  explicit Dealer(std::span<const Task> tasks) : tasks_(tasks) {}

  /// What the crew waits in all between the tasks of the finishing day.
  int idle_min(const Schedule& schedule);
  /// Writes who does what into the schedule that `idle_min` was asked of last.
  void name(Schedule& schedule) const;

 private:
  /// One of the crew while tasks are being assigned.
  struct Hand {
    int free_from_min = 0;
    bool has_begun = false;  ///< has started the finishing day
  };
  /// Task and individual.
  using Given = std::pair<std::size_t, int>;

  bool is_named(const Schedule& schedule) const;
  int deal(const Schedule& schedule);
  std::size_t next_free(int at_min) const;
  int idle_of_named_min(const Schedule& schedule) const;

  std::span<const Task> tasks_;
  std::vector<Hand> crew_;
  std::vector<std::pair<int, std::size_t>> by_start_;  ///< start and task
  std::vector<Given> given_;
};

}  // namespace slabtide
