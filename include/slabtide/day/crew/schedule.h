#pragma once

#include <span>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// The smallest crew that can do every task: the most hands any of them needs; at least 1.
int min_crew(std::span<const Task> tasks);

/// The fewest minutes late in all; among those the earliest last finish; among those met in the
/// search the least idle. Nobody starts a task before its window, nor before what must come
/// first, and nobody is in two places. The same tasks always give the same schedule.
///
/// Lists the tasks by several rules, puts each at its first free place (serial generation),
/// and improves the best list by moving late tasks and what they wait for forward, by trying
/// other numbers of hands, and by a few such moves at once, the same in every run; small sets
/// are searched whole (branch and bound over starts that do not decrease, which holds an optimum
/// for any measure that does not gain by a later end). A crew is never later than a smaller one: it
/// may work as that one would.
///
/// One entry a crew size, from min_crew to `max_crew`.
/// Error: std::invalid_argument where `max_crew` is under min_crew, a task waits for one
/// that does not come before it, or its hands or work are not positive.
std::vector<Schedule> schedules_up_to(std::span<const Task> tasks, int max_crew);

/// The same, but no crew is looked at beyond the first of `own_crew` or more that misses nothing:
/// a larger one misses nothing either.
std::vector<Schedule> schedules_until_in_time(std::span<const Task> tasks, int own_crew,
                                              int max_crew);
/// The last of `schedules_up_to`.
Schedule schedule(std::span<const Task> tasks, int crew);

}  // namespace slabtide
