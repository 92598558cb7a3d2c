#pragma once

#include <span>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/roster.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// The smallest crew that can do every task: the most workers any of them needs, at least 1.
int min_crew(std::span<const Task> tasks);

/// The fewest total minutes late; among those the earliest last finish; among those found by the
/// search the least idle time. Nobody starts a task before its window or before the tasks it waits
/// for, and nobody is in two places. The same tasks always give the same schedule.
///
/// Orders the tasks by several rules, places each at its first free time (serial generation), and
/// improves the best list by moving late tasks and what they wait for forward, by trying other
/// numbers of workers, and by random combinations of such moves, the same in every run. Small sets
/// are searched completely (branch and bound over non-decreasing starts, which include an optimum
/// for any measure that a later end does not improve). A crew is never later than a smaller one,
/// because it may work as that one would.
///
/// The search is bounded by counts: 5,000 lists a crew size, and of n tasks, where n is over 40,
/// 200,000 * 40 / n tasks put in a place in all; of h hands who are not alike, where h is over 8,
/// 8 / h of that. A longer search might find a better day of many
/// tasks than this one; `proved` says where none does.
///
/// One entry per crew size, from min_crew to `max_crew`.
/// Error: std::invalid_argument if `max_crew` is below min_crew, a task waits for one that is not
/// before it, or its workers or work are not positive.
std::vector<Schedule> schedules_up_to(std::span<const Task> tasks, int max_crew);

/// The same, but stops at the first crew of `own_crew` or more that is never late, because larger
/// crews are never late either.
std::vector<Schedule> schedules_until_in_time(std::span<const Task> tasks, int own_crew,
                                              int max_crew);
/// The last of `schedules_up_to`.
Schedule schedule(std::span<const Task> tasks, int crew);

/// The schedules of a crew one by one: of the roster, then of larger ones with usual hands added,
/// up to `max_crew`, until one is never late. Nobody works outside their hours, but on tasks with
/// `any_hours`, nor on what they cannot do, and between two sites there is time to travel. How long
/// a task takes follows the pace of those on it. One schedule of a roster that is a count is
/// the same as `schedule` of that count.
/// Error: std::invalid_argument as above, and if fewer can do a task than it needs.
std::vector<Schedule> schedules_until_in_time(std::span<const Task> tasks, const Roster& roster,
                                              int max_crew);

}  // namespace slabtide
