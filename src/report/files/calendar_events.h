#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// Something of the day that stands in a calendar. Times to the minute.
struct CalendarEvent {
  /// What it is, in words that stay when its times change: kind, zone, part, operation.
  std::string id;
  std::string category;  ///< "crew", "truck", "window" or "saw"
  std::string summary;
  std::string description;
  UtcTime starts;
  std::optional<UtcTime> ends;  ///< absent for a moment
  int alarm_before_min = 0;
};

/// Trucks, arrivals of the crew, windows of every part and form, and the cuts with the saw that
/// each zone's joints are left to, in this order. What does not come is left out. Walking,
/// washing and sealing wait for the whole zone and start when it is ready all over.
///
/// Parts go by their number, not by their name: a name such as "last 20 ft" changes with the
/// forecast, and the event should move, not double.
std::vector<CalendarEvent> calendar_events(const PlannedPour& facts);

}  // namespace slabtide
