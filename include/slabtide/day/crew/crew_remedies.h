#pragma once

#include <span>
#include <string>
#include <vector>

#include "slabtide/day/crew/assignment.h"
#include "slabtide/day/crew/roster.h"
#include "slabtide/day/crew/task.h"

namespace slabtide {

/// Something that can still be changed.
enum class RemedyKind { more_hands, slow_the_set, place_later, pour_less };
struct CrewRemedy {
  RemedyKind kind = RemedyKind::more_hands;
  std::string zone;                    ///< empty for the whole job
  int amount = 0;                      ///< workers, or minutes, or zones left for another day
  int late_min = 0;                    ///< lateness that remains
  std::vector<std::string> kept = {};  ///< zones still poured that day, in order
  std::vector<std::string> left = {};  ///< zones left for another, in order
  std::vector<std::string> lost = {};  ///< zones whose finish is lost even so, in order of placing
};

/// What saves the finish of one zone that the crew loses.
struct ZoneRescue {
  std::string zone;
  int most_hands = 0;  ///< of the largest crew that was tried
  /// The least of each kind; empty if nothing that was tried does.
  std::vector<CrewRemedy> ways = {};
};

/// What was tried against lateness.
struct CrewHelp {
  std::vector<CrewRemedy> remedies;  ///< that make the crew less late, the best first
  std::vector<ZoneRescue> rescues;   ///< of the zones lost, the latest first; three at most (ours)
};

/// Ten hours: more than a working day, where no figure of minutes helps and no remedy is one
/// (ours).
inline constexpr int hopeless_late_min = 600;

/// "nothing late", "1 h 20 min late", "over 10 h late".
std::string late_words(int minutes);
/// "one more finisher: nothing late".
std::string remedy_words(const CrewRemedy& remedy);
/// "to save pad: one more finisher (nothing late), or a retarder that holds it back 60 min (still
/// lost: walk)".
std::string rescue_words(const ZoneRescue& rescue);

/// Tries what could still be changed in the schedule: one or two more workers; slowing the set of
/// the latest zone, as a retarder would (its windows are moved back unchanged and its placing is
/// kept); placing that zone later; and, where finishes are lost, as many more workers as it takes
/// up to the largest crew tried, or only so many of the zones, in the order of their placing, as
/// the crew can finish. Remedies are those that reduce lateness, to less than ten hours; a zone
/// whose finish is lost is rescued by what leaves it in time, whatever it does for the others. This
/// only tries the timetable and computes no new windows (`compare` does). `larger`: the schedules
/// of larger crews, increasing; `threads` as in SolverSettings.
CrewHelp crew_remedies(const std::vector<Task>& tasks, const Roster& roster,
                       const Schedule& as_planned, std::span<const Schedule> larger,
                       int threads = 1);

}  // namespace slabtide
