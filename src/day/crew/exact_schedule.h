#pragma once

#include <optional>
#include <span>
#include <vector>

#include "task_list.h"

namespace slabtide {

/// Branch and bound over all schedules whose tasks are placed one by one with non-decreasing
/// starts; one of these is optimal for late minutes and last finish. Gives the first schedule that
/// improves `to_better` as far as possible in these two, if there is one; `whole` tells whether the
/// search was completed before `max_nodes`. Where it matters who does what, every group of hands is
/// tried; these count as nodes, and a roster over `max_hands_exactly` is not searched.
struct ExactSearch {
  std::optional<std::vector<Assignment>> better;
  bool whole = true;
};
inline constexpr int max_hands_exactly = 6;
ExactSearch search_exactly(std::span<const Task> tasks, const Roster& roster, const Goal& to_better,
                           int max_nodes);

}  // namespace slabtide
