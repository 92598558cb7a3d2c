#include "lent_tasks.h"

#include <algorithm>

#include "hand_load.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// How late the task is with so many hands, with nothing else to do; empty if their hours leave no
/// room for it.
std::optional<int> late_with(const Task& task, const Roster& roster, int hands) {
  // Every hour is open to all after the last day that hours bind for.
  constexpr int open_from_min = (roster_days - 1) * 24 * static_cast<int>(minutes_per_hour);
  const HandLoad nobody_busy(roster);
  const HandLoad::Place place = nobody_busy.first_place(task, task.start_from_min, hands);
  if (place.start_min >= open_from_min) return std::nullopt;
  return task.late_min(place.start_min, place.end_min);
}

/// Fewer hands than it wants do a task where so many are never there, or where it would be late
/// because they are there together too late: what is due does not wait overnight for a second hand.
void lend_hours(Task& task, const Roster& roster) {
  const int most = std::min(task.max_hands, roster.able(task));
  std::optional<int> least_late_min;
  for (int hands = task.min_hands; hands <= most; ++hands) {
    const auto late_min = late_with(task, roster, hands);
    if (late_min) least_late_min = std::min(least_late_min.value_or(*late_min), *late_min);
  }
  if (least_late_min == 0) return;
  bool fits = least_late_min.has_value();
  for (int hands = task.min_hands - 1; hands >= 1; --hands) {
    const auto late_min = late_with(task, roster, hands);
    if (!late_min || (least_late_min && *late_min >= *least_late_min)) continue;
    least_late_min = late_min;
    task.min_hands = hands;
    fits = true;
  }
  task.any_hours = !fits;
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
