#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"

// How dates and times are shown. Whatever a person reads goes through here; files that a machine
// reads have ISO 8601 (`civil_time.h`).

namespace slabtide {

/// The two ways a clock counts the hours: "1:05 PM" and "13:05".
enum class HourCount { twelve, twenty_four };
/// "12" or "24"; empty for anything else.
std::optional<HourCount> parse_hour_count(std::string_view text);

/// How a place writes its dates and times.
struct ClockStyle {
  HourCount hours = HourCount::twenty_four;
  bool month_first = false;  ///< "Thu, May 14, 2026", else "Thu 14 May 2026"
};

/// "7:05 AM" or "07:05"; midnight is 12:00 AM, noon 12:00 PM. Seconds are left out. Error:
/// std::invalid_argument if `time_of_day` is not within a day.
std::string shown_time(Duration time_of_day, HourCount hours);
/// "Thu, May 14, 2026" or "Thu 14 May 2026". Error: std::invalid_argument if it is no date.
std::string shown_date(Date date, const ClockStyle& style);
/// "Thu, May 14" or "Thu 14 May". Error: as above.
std::string shown_day(Date date, const ClockStyle& style);
/// "Thu". Error: as above.
std::string shown_weekday(Date date);

/// The two ends of a span of time, as they are shown one after the other.
struct ShownSpan {
  std::string from;
  std::string to;
};

/// The clock of a place, as the people there read it. Times are shown to the nearest minute. Error
/// of all functions: std::invalid_argument if a time is not a date and time.
struct Clock {
  TimeZone zone;
  ClockStyle style;

  /// The local day of the time's nearest minute.
  Date day(UtcTime time) const;
  /// "10:55 AM"; in the hour that comes twice when the clocks go back "1:30 AM EDT".
  std::string time(UtcTime time) const;
  /// An axis's mark at a full hour: "10 AM", or "10:00".
  std::string hour(UtcTime time) const;
  /// "Thu, May 14, 2026".
  std::string date(UtcTime time) const { return shown_date(day(time), style); }
  /// "Thu 10:55 AM".
  std::string weekday_time(UtcTime time) const;
  /// "Thu, May 14, 2026, 10:55 AM".
  std::string date_time(UtcTime time) const;
  /// The time, with its weekday if it is on another day than `home`.
  std::string time_seen_from(Date home, UtcTime time) const;
  /// "8:10" and "9:25 AM", "11:40 AM" and "1:05 PM", "08:10" and "09:25"; with weekdays as
  /// `time_seen_from`, the second's only where it differs from the first's.
  ShownSpan ends_seen_from(Date home, UtcTime from, UtcTime to) const;
  /// The same as one text: "8:10–9:25 AM".
  std::string span_seen_from(Date home, UtcTime from, UtcTime to) const;
};

}  // namespace slabtide
