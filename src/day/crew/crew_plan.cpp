#include "slabtide/day/crew/crew_plan.h"

#include "slabtide/core/units.h"

namespace slabtide {

double CrewPlan::crew_hours() const {
  double seconds = 0.0;
  for (const CrewMember& member : people) {
    for (const CrewVisit& visit : member.visits) {
      seconds += seconds_between(visit.arrives, visit.leaves);
    }
  }
  return seconds / seconds_per_hour;
}

}  // namespace slabtide
