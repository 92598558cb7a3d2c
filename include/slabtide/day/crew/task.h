#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "slabtide/day/practice/task_kind.h"
#include "slabtide/day/windows/place_id.h"

namespace slabtide {

/// A piece of work for the finishing crew, done in one go by the same people. Minutes count from
/// the start of the pour.
///
/// Concrete becomes ready progressively along a part, so both ends of a window move: the first
/// tenth is ready, and gets too stiff, before the last tenth. Work that follows the setting must
/// start while the first tenth is workable and end while the last one is.
struct Task {
  TaskKind kind = TaskKind::screed;
  std::optional<PlaceId> place;  ///< absent for the whole job
  std::string zone;              ///< as it is shown; empty for the whole job
  std::string part;              ///< as it is shown; empty for a whole zone
  /// A part too large to be done in one go is divided into pieces, in the order they become ready.
  int piece = 1;
  int pieces = 1;
  double work_person_min = 0.0;
  double min_duration_min = 0.0;  ///< minimum, however many workers, because it follows something
                                  ///< else
  int min_hands = 1;
  int max_hands = 1;
  int start_from_min = 0;           ///< when the first tenth is ready
  int end_from_min = 0;             ///< when the last tenth is ready: not finished before
  std::optional<int> start_by_min;  ///< when the first tenth is too stiff
  std::optional<int> end_by_min;    ///< when the last tenth is, or when it is needed
  std::vector<std::size_t> after;   ///< indices of earlier tasks that must be done first
  int wait_after_min = 0;           ///< between their end and the start
  /// Comes hours after the finishing (saw, covers, next day), so it is not part of the finishing
  /// day.
  bool later = false;
  std::size_t site = 0;    ///< of several sites that share a crew
  bool any_hours = false;  ///< nobody's hours allow it, so it is planned without regard to them

  /// From the work and what the workers do together, in usual hands: their number, if each keeps
  /// the usual pace. Longer if the last tenth is not ready in time.
  int duration_min(double hands) const;
  /// The first start at which these workers are neither too early nor have to wait for the last
  /// tenth.
  int from_min(double hands) const;
  int late_min(int start_min, int end_min) const;
  /// Minutes to spare; negative if late, empty if there is no deadline.
  std::optional<int> slack_min(int start_min, int end_min) const;
};

/// Rounded up, ignoring rounding errors.
int whole_minutes(double minutes);

/// "stamp, landing, outer strip".
std::string task_words(const Task& task);

}  // namespace slabtide
