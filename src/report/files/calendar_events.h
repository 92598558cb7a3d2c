#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// An event of the day for the calendar. Times are to the minute.
struct CalendarEvent {
  /// What it is, made from things that stay the same when its times change: kind, zone, part,
  /// operation.
  std::string id;
  std::string category;  ///< "crew", "truck", "window" or "saw"
  std::string summary;
  std::string description;
  UtcTime starts;
  std::optional<UtcTime> ends;  ///< absent for an event without duration
  int alarm_before_min = 0;
};

/// Trucks, arrivals of the crew, windows of every part and form, and the saw cuts of zones whose
/// joints are sawn, in this order. Events that do not happen are left out. Walking, washing and
/// sealing are for the whole zone and start when all of it is ready.
///
/// Parts are identified by their index rather than their name: a name such as "last 20 ft" changes
/// with the forecast, and then the event should move rather than be duplicated.
std::vector<CalendarEvent> calendar_events(const PlannedPour& facts);

}  // namespace slabtide
