#pragma once

#include <span>
#include <string>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/roster.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// Something that can still be changed.
enum class RemedyKind { more_hands, slow_the_set, place_later };
struct CrewRemedy {
  RemedyKind kind = RemedyKind::more_hands;
  std::string zone;  ///< empty for the whole job
  int amount = 0;    ///< workers, or minutes
  int late_min = 0;  ///< lateness that remains
};

/// "nothing late", "1 h 20 min late", "over 10 h late".
std::string late_words(int minutes);
/// "one more finisher: nothing late".
std::string remedy_words(const CrewRemedy& remedy);

/// Tries what could still be changed in the schedule: one or two more workers; slowing the set of
/// the latest zone, as a retarder would (its windows are moved back unchanged and its placing is
/// kept); placing that zone later. Returns those that reduce lateness, to less than ten hours,
/// best first. This only tries the timetable and computes no new windows (`compare` does).
/// `larger`: the schedules of larger crews, increasing; `threads` as in SolverSettings.
std::vector<CrewRemedy> crew_remedies(const std::vector<Task>& tasks, const Roster& roster,
                                      const Schedule& as_planned, std::span<const Schedule> larger,
                                      int threads = 1);

}  // namespace slabtide
