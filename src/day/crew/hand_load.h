#pragma once

#include <bit>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "slabtide/day/crew/roster.h"

namespace slabtide {

/// Some of a roster, a bit each.
using HandSet = std::uint64_t;

std::vector<int> members_of(HandSet set);

/// Calls `visit` with the index of each, in order.
template <class Visit>
void each_of(HandSet set, const Visit& visit) {
  for (; set != 0; set &= set - 1) visit(static_cast<std::size_t>(std::countr_zero(set)));
}

/// Who of a roster is where through the day, one by one: what CrewLoad is for a crew that is a
/// count. Not for several threads at once.
class HandLoad {
 public:
  /// Refers to the roster, which must have at most 64 hands.
  explicit HandLoad(const Roster& roster) : roster_(roster), stays_(roster.hands.size()) {}

  struct Place {
    HandSet who = 0;
    int start_min = 0;
    int end_min = 0;
  };

  /// The first time at which so many of those able are free until the task is done, and within
  /// their hours: the fastest of them, but helpers first where the work takes no skill. Among
  /// equals whoever need not travel, then whoever became free last.
  Place first_place(const Task& task, int ready_min, int hands) const;
  /// The same for just these.
  Place first_place_of(const Task& task, int ready_min, HandSet who) const;

  void take(const Place& place, std::size_t site);
  /// Undoes a `take`, in any order.
  void give_back(const Place& place);

  /// How often it was looked when somebody is free: the work done so far.
  std::size_t looks() const { return looks_; }

 private:
  /// On a task.
  struct Stay {
    int start_min = 0;
    int end_min = 0;
    std::size_t site = 0;
  };
  struct FreeTime {
    int from_min = 0;
    int to_min = 0;
  };
  /// One who is free.
  struct FreeHand {
    std::size_t index = 0;
    int to_min = 0;
    bool spared = false;  ///< for work that takes skill
    double pace = 1.0;
    bool travels = false;
    int since_min = std::numeric_limits<int>::min();
  };

  int travel_min(const Stay& stay, const Task& task) const;
  /// The first time at or after `at_min` at which this one can be on the task, and until when.
  FreeTime free_time(std::size_t hand, const Task& task, int at_min) const;
  FreeHand free_hand(std::size_t hand, const Task& task, int at_min, int to_min) const;
  void find_free_at(const Task& task, int at_min, int& next_min) const;
  /// The first time at which one of those who are free is free again after the next call.
  int next_return_min(const Task& task) const;
  /// The first of those who are free who can do it together from `at_min` on.
  std::optional<Place> chosen(const Task& task, int at_min, int hands) const;

  const Roster& roster_;
  std::vector<std::vector<Stay>> stays_;  ///< of each hand, in order
  mutable std::size_t looks_ = 0;
  // Where the last were: a search looks a million times.
  mutable std::vector<FreeHand> free_;
  mutable std::vector<int> limits_min_;
};

}  // namespace slabtide
