#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/practice/task_kind.h"

namespace slabtide {

/// A piece of work for the finishing crew, done in one go by the same hands. Minutes count
/// from the start of the pour.
///
/// Concrete gets ready along a part, so a window has two ends that move: the first tenth is
/// ready and gets too stiff before the last tenth does, and work that follows the setting
/// must start while the first is workable and end while the last is.
struct Task {
  TaskKind kind = TaskKind::screed;
  std::string zone;  ///< empty for the whole job
  std::string part;  ///< empty for a whole zone
  /// A part too large to be done in one go is taken in pieces, as it gets ready.
  int piece = 1;
  int pieces = 1;
  double work_person_min = 0.0;
  double min_duration_min = 0.0;  ///< takes so long on any hands: it keeps step with something
  int min_hands = 1;
  int max_hands = 1;
  int start_from_min = 0;           ///< the first tenth is ready
  int end_from_min = 0;             ///< the last tenth is ready: not done before
  std::optional<int> start_by_min;  ///< the first tenth is too stiff
  std::optional<int> end_by_min;    ///< the last tenth is, or it is wanted by then
  std::vector<std::size_t> after;   ///< indices of earlier tasks that must be done before
  int wait_after_min = 0;           ///< between the end of those and the start
  /// Comes hours after the finishing (saw, covers, next day): no part of the finishing day.
  bool later = false;

  /// From the work and the hands; drawn out where the last tenth keeps one waiting.
  int duration_min(int hands) const;
  /// The first start at which these hands neither come too soon nor wait for the last tenth.
  int from_min(int hands) const;
  int late_min(int start_min, int end_min) const;
  /// Minutes to spare; negative where late, empty where nothing presses.
  std::optional<int> slack_min(int start_min, int end_min) const;
};

/// Rounded up, but for what rounding itself may have added.
int whole_minutes(double minutes);

/// "stamp, landing, outer strip".
std::string task_words(const Task& task);

}  // namespace slabtide
