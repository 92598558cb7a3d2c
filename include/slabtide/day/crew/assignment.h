#pragma once

#include <vector>

namespace slabtide {

/// When a task is done and by whom.
struct Assignment {
  int hands = 0;
  int start_min = 0;
  int end_min = 0;
  int late_min = 0;
  std::vector<int> who;  ///< numbers of the crew, from 0, rising; as many as `hands`
};

/// The crew's day. One entry a task, in the order of the tasks.
struct Schedule {
  int crew = 0;
  std::vector<Assignment> assignments;
  int late_min = 0;         ///< over all tasks
  int last_finish_min = 0;  ///< of the tasks of the finishing day; 0 where there is none
  int idle_min = 0;         ///< between each one's tasks of the finishing day, over the crew
  /// No other schedule is less late, nor, with as little lateness, finishes sooner.
  bool proved = false;
};

}  // namespace slabtide
