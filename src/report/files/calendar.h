#pragma once

#include <string>
#include <string_view>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// When a calendar is made, and the one it takes the place of.
struct CalendarIssue {
  UtcTime now;
  std::string_view before;  ///< the older file's text; empty where there is none
};

/// The line by which a calendar of ours is known (RFC 5545, section 3.7.3).
inline constexpr std::string_view calendar_product = "PRODID:-//Slabtide//Slabtide//EN";

/// The day as an iCalendar file (RFC 5545): an event for each thing to be there for, with an
/// alarm, in UTC.
///
/// A later export updates the events of an earlier one. UIDs come from the job (its name and
/// site) and from what the event is, never from its times. An event's SEQUENCE is the count of
/// seconds since 2020 by `now` when it last changed, so that it rises from file to file even
/// where the older one is gone; beside an older file it is one more at least, and an event that
/// did not change keeps its SEQUENCE and DTSTAMP. An event of the older file that is no longer
/// planned is carried on as cancelled, so that calendars take it away.
///
/// No METHOD: with it RFC 5546 wants an organizer with an address, and many programs then treat
/// the events as an invitation that its reader cannot change. Without it the file is a plain
/// snapshot, and DTSTAMP says when the event was last revised (RFC 5545, section 3.8.7.2).
std::string calendar(const PlannedPour& facts, const CalendarIssue& issue);

}  // namespace slabtide
