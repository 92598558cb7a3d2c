#pragma once

#include <string>
#include <string_view>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// When a calendar is made, and the one it replaces.
struct CalendarIssue {
  UtcTime now;
  std::string_view before;  ///< the older file's text; empty if there is none
};

/// The line that identifies the program's own calendars (RFC 5545, section 3.7.3).
inline constexpr std::string_view calendar_product = "PRODID:-//Slabtide//Slabtide//EN";

/// The day as an iCalendar file (RFC 5545): one event for each thing someone must be there for,
/// with an alarm, in UTC.
///
/// A later export updates the events of an earlier one. UIDs are made from the job (its name and
/// site) and from what the event is, never from its times. An event's SEQUENCE is the number of
/// seconds from 2020 to its last change, so that it increases from file to file even if the older
/// file is lost; if there is an older file it is at least one more than there, and an event that
/// did not change keeps its SEQUENCE and DTSTAMP. An event of the older file that is no longer
/// planned is kept as cancelled, so that calendars remove it.
///
/// There is no METHOD: with it RFC 5546 requires an organizer with an address, and many programs
/// then treat the events as an invitation that the reader cannot change. Without it the file is a
/// plain snapshot, and DTSTAMP says when the event was last revised (RFC 5545, section 3.8.7.2).
std::string calendar(const PlannedPour& facts, const CalendarIssue& issue);

}  // namespace slabtide
