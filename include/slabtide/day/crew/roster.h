#pragma once

#include <limits>
#include <string>
#include <vector>

#include "slabtide/day/crew/task.h"
#include "slabtide/job/model/job.h"

namespace slabtide {

/// From when to when somebody is there, in minutes from the start of the pour.
struct Shift {
  int from_min = 0;
  int to_min = 0;
};

/// One of a crew, as far as it matters to who does what.
struct RosterHand {
  std::string name;
  double pace = 1.0;          ///< work done over that of a usual hand in the same time
  bool simple_work = false;   ///< only work that takes no skill (`takes_skill`)
  std::vector<Shift> shifts;  ///< increasing and apart; empty for one who is there all the time

  bool can_do(const Task& task) const { return !simple_work || !takes_skill(task.kind); }
};

/// A crew, one by one.
struct Roster {
  std::vector<RosterHand> hands;
  int travel_min = 0;  ///< from one site to another

  int size() const { return static_cast<int>(hands.size()); }
  /// Whether it makes no difference who of them does what: a count then says all.
  bool is_count() const;
  /// What the fastest of them do together, in usual hands: of one, of two, and so on.
  std::vector<double> fastest() const;
  /// How many of them can do the task.
  int able(const Task& task) const;
};

/// That many usual hands, "finisher 1" and so on, who are there all the time.
Roster usual_roster(int size);
/// The same crew with usual hands added up to `size`.
Roster enlarged(Roster roster, int size);

/// The hours of a roster bind for this many days from the pour's (ours): a plan ends before. From
/// then on everybody is taken to be there, so that every task has its place.
inline constexpr int roster_days = 10;

/// The job's crew. Hours of a hand count each day: from `from` to the next `to` of the clock. Who
/// has no `from` is there from the hour the crew arrives, and on later days from midnight; who has
/// no `to` stays to the end.
Roster roster_of(const Job& job);

}  // namespace slabtide
