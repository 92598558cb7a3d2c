#pragma once

#include <span>
#include <string>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// Something that can still be changed, and what it does to the minutes late.
enum class RemedyKind { more_hands, slow_the_set, place_later };
struct CrewRemedy {
  RemedyKind kind = RemedyKind::more_hands;
  std::string zone;  ///< empty for the whole job
  int amount = 0;    ///< hands, or minutes
  int late_min = 0;  ///< what is left
};

/// "nothing late", "12 min late".
std::string late_words(int minutes);
/// "one more finisher: nothing late".
std::string remedy_words(const CrewRemedy& remedy);

/// Tries what could still be changed on the schedule: one and two more hands; the set of the
/// zone that is most late slowed (its windows moved back as they are, its placing kept), as a
/// retarder would; that zone placed later by itself. Those that leave less late, best first.
/// A trial on the timetable: it computes no new windows (`compare` does).
/// `larger`: the schedules of larger crews, rising.
std::vector<CrewRemedy> crew_remedies(const std::vector<Task>& tasks, const Schedule& as_planned,
                                      std::span<const Schedule> larger);

}  // namespace slabtide
