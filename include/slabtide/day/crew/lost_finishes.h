#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// Work that makes the finish is taken to be lost where it is later than this (ours): a window
/// closes with the first tenth of its area, and a few minutes past it cost looks, not the slab.
inline constexpr int finish_lost_min = 10;

/// The zones of the tasks, by index, in the order of their placing.
std::vector<std::size_t> zones_as_placed(std::span<const Task> tasks);
/// Of them those, in that order, for whose finish a crew that works like this comes too late.
/// `schedule` is of the tasks.
std::vector<std::size_t> lost_finishes(std::span<const Task> tasks, const Schedule& schedule);

}  // namespace slabtide
