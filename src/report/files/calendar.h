#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "calendar_events.h"
#include "slabtide/report/files/calendar_scope.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// When a calendar is made, and the one it replaces.
struct CalendarIssue {
  UtcTime now;
  std::string_view before;  ///< the older file's text; empty if there is none
  CalendarScope scope = {};
};

/// The line that identifies the program's own calendars (RFC 5545, section 3.7.3).
inline constexpr std::string_view calendar_product = "PRODID:-//Slabtide//Slabtide//EN";

/// An event and where it is.
struct SiteEvent {
  CalendarEvent event;
  const Site* site = nullptr;
};

/// What a calendar is made of.
struct CalendarContent {
  std::string id;  ///< what its identifiers are made from: the job's name and site
  std::string name;
  std::vector<SiteEvent> events;
};

/// What a job's identifiers are made from. Two jobs with the same name are at different places;
/// rounding to a hundredth of a degree allows small corrections of the coordinates.
std::string calendar_id(const Job& job);

/// An iCalendar file (RFC 5545) of these events, each with an alarm, in UTC.
///
/// A later export updates the events of an earlier one. UIDs are made from the content's id and
/// from what the event is, never from its times. An event's SEQUENCE is the number of seconds from
/// 2020 to its last change, so that it increases from file to file even if the older file is lost;
/// if there is an older file it is at least one more than there, and an event that did not change
/// keeps its SEQUENCE and DTSTAMP. An event of the older file that is no longer planned is kept as
/// cancelled, so that calendars remove it.
///
/// METHOD is PUBLISH: a calendar to look at, with nobody to answer. RFC 5546 (section 3.2.1) then
/// asks for an organizer in every event; it is the calendar itself, named by its UID, since a
/// person to write to is none of the program's knowledge. DTSTAMP says when the event was last
/// revised.
std::string calendar(const CalendarContent& content, const CalendarIssue& issue);

/// The day of a pour: an event for each thing that the scope asks for.
std::string calendar(const PlannedPour& facts, const CalendarIssue& issue);

}  // namespace slabtide
