#pragma once

#include <optional>
#include <span>
#include <vector>

#include "task_list.h"

namespace slabtide {

/// Branch and bound over all schedules whose tasks are placed one by one with starts that do
/// not decrease: one of them is best for late minutes and last finish. Gives the first that
/// improves `to_better` in these two as far as can be, if there is one; `whole` tells whether
/// the search ended before `max_nodes`.
struct ExactSearch {
  std::optional<std::vector<Assignment>> better;
  bool whole = true;
};
ExactSearch search_exactly(std::span<const Task> tasks, int crew, const Score& to_better,
                           int max_nodes);

}  // namespace slabtide
