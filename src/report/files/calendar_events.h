#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/report/files/calendar_scope.h"
#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The alarm before somebody has to be on site: travel (ours).
inline constexpr int before_arrival_min = 60;

/// An event of the day for the calendar. Times are to the minute.
struct CalendarEvent {
  /// What it is, made from things that stay the same when its times change: kind, zone, part,
  /// operation.
  std::string id;
  std::string category;  ///< "crew", "truck", "finish", "window" or "saw"
  std::string summary;
  std::string description;
  UtcTime starts;
  std::optional<UtcTime> ends;  ///< absent for an event without duration
  int alarm_before_min = 0;
  /// A second alarm, so long before the end; absent where the end is no last call.
  std::optional<int> last_call_min = std::nullopt;
};

/// The loads, each zone's finish with a last call before it closes, and each saw's run over the
/// zones that it is to saw. In detail: loads, arrivals of the crew, windows of every part and form,
/// and every saw cut, in this order. Of one finisher: the arrivals, and of the finishes and runs
/// those that the finisher works on. Events that do not happen are left out. Walking, washing and
/// sealing are for the whole zone and start when all of it is ready.
///
/// Parts are identified by their index rather than their name: a name such as "last 20 ft" changes
/// with the forecast, and then the event should move rather than be duplicated.
std::vector<CalendarEvent> calendar_events(const PlannedPour& facts, const CalendarScope& scope);

/// Why there is no such finisher in the plan, with those there are; empty if there is one, or none
/// is asked for.
std::string finisher_fault(const CrewPlan& crew, const std::string& finisher);

}  // namespace slabtide
