#pragma once

#include <vector>

namespace slabtide {

/// When a task is done and by whom.
struct Assignment {
  int hands = 0;
  int start_min = 0;
  int end_min = 0;
  int late_min = 0;
  std::vector<int> who;  ///< indices of the crew, from 0, increasing; as many as `hands`
};

/// The crew's day, with one assignment per task in the order of the tasks.
struct Schedule {
  int crew = 0;
  std::vector<Assignment> assignments;
  int late_min = 0;         ///< total over all tasks
  int last_finish_min = 0;  ///< of the tasks of the finishing day; 0 if there are none
  int idle_min = 0;         ///< total waiting between each person's tasks of the finishing day
  /// No other schedule is less late, or finishes sooner with the same lateness.
  bool proved = false;
};

}  // namespace slabtide
