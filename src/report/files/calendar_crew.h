#pragma once

#include <span>
#include <string>

#include "calendar.h"
#include "slabtide/day/plan/shared_crew.h"

namespace slabtide {

/// The stays of a crew on its sites as an iCalendar file, or of one of them if the scope names one:
/// an event each, with what is done there line by line. `pours` as share_crew had them.
std::string crew_calendar(const SharedCrew& shared, std::span<const PlannedPour> pours,
                          const CalendarIssue& issue);

/// The same of a crew on one site, as its plan has it.
std::string crew_calendar(const PlannedPour& pour, const CalendarIssue& issue);

}  // namespace slabtide
