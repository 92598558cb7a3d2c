#pragma once

#include <span>

#include "task_list.h"

namespace slabtide {

/// A schedule and the list it was made from.
struct FoundSchedule {
  Schedule schedule;
  TaskList list;
  std::size_t work = 0;  ///< TaskPlacer::work of this search
};

/// The search for one crew, which must be large enough for every task. `smaller`, if not null, is
/// the schedule of a smaller crew, whose hands this one has too; it is kept if nothing better is
/// found.
FoundSchedule search_schedule(std::span<const Task> tasks, const Roster& roster,
                              const FoundSchedule* smaller);

}  // namespace slabtide
