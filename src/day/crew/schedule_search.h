#pragma once

#include <span>

#include "task_list.h"

namespace slabtide {

/// A schedule and the list it grew from.
struct FoundSchedule {
  Schedule schedule;
  TaskList list;
  std::size_t placings = 0;  ///< tasks put in a place in this search: its work
};

/// The search for one crew size, which must be enough for every task. `smaller`, where there
/// is one, is the schedule of a smaller crew: it is kept where nothing better is found.
FoundSchedule search_schedule(std::span<const Task> tasks, int crew, const FoundSchedule* smaller);

}  // namespace slabtide
