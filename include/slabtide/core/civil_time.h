#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/time_zone.h"

namespace slabtide {

/// Error, here and in all functions below: std::invalid_argument if an argument is not a date and
/// time.
double seconds_between(UtcTime from, UtcTime to);
/// `start` moved by `seconds`, rounded to the whole second. Error: std::invalid_argument if
/// `seconds` is not finite or is more than 1000 years either way.
UtcTime after_seconds(UtcTime start, double seconds);
/// The nearest whole minute.
UtcTime to_minute(UtcTime time);

/// RFC 3339, to the nearest minute: "2026-05-14T08:00:00-05:00".
std::string iso8601_minute(UtcTime time, const TimeZone& zone);
/// Local clock time to the nearest minute as files have it: "08:00". What a person reads is shown
/// by a `Clock`.
std::string clock_time(UtcTime time, const TimeZone& zone);
/// "YYYY-MM-DD" read strictly; empty for anything else, including a day that does not exist.
std::optional<Date> parse_date(std::string_view text);
/// A clock time as a person types it: "07:30", "7:30", "0730" or "8" (24 hours), "7:30 AM",
/// "730am", "8 AM", "noon", "12 noon", "midnight", which begins the day.
std::optional<Duration> parse_clock(std::string_view text);
/// Whether the text alone is an AM, a PM or a noon that belongs to the hour before it.
bool is_half_of_day(std::string_view text);
/// ISO 8601 instants: "2026-05-14T08:00", ":SS" optional, "Z" or "+hh:mm" optional.
struct ParsedInstant {
  LocalTime local;
  std::optional<Duration> offset;  ///< absent where the text gives none
};
std::optional<ParsedInstant> parse_instant(std::string_view text);
/// An instant as a person types it: the same, or a date and a clock time as `parse_clock` takes it,
/// with a space or a T between.
std::optional<ParsedInstant> parse_typed_instant(std::string_view text);

}  // namespace slabtide
