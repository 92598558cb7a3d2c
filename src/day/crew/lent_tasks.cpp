#include "lent_tasks.h"

#include <algorithm>

#include "hand_load.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

bool fits_hours(const Task& task, const Roster& roster, int hands) {
  // Every hour is open to all after the last day that hours bind for.
  constexpr int open_from_min = (roster_days - 1) * 24 * static_cast<int>(minutes_per_hour);
  const HandLoad nobody_busy(roster);
  return nobody_busy.first_place(task, task.start_from_min, hands).start_min < open_from_min;
}

void lend_hours(Task& task, const Roster& roster) {
  const int most = std::min(task.max_hands, roster.able(task));
  for (int hands = task.min_hands; hands <= most; ++hands) {
    if (fits_hours(task, roster, hands)) return;
  }
  for (int hands = task.min_hands - 1; hands >= 1; --hands) {
    if (!fits_hours(task, roster, hands)) continue;
    task.min_hands = hands;
    return;
  }
  task.any_hours = true;
}

}  // namespace

bool lend_to(std::vector<Task>& tasks, const Roster& roster) {
  bool short_handed = false;
  for (Task& task : tasks) {
    const int needed = task.min_hands;
    task.min_hands = std::min(needed, roster.able(task));
    if (!roster.is_count()) lend_hours(task, roster);
    short_handed = short_handed || task.min_hands < needed;
  }
  return short_handed;
}

}  // namespace slabtide
