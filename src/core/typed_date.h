#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/civil_time.h"

// Days as a person writes them: 2026-05-14, 5/14/2026, "Thu, May 14", "tomorrow".

namespace slabtide {

/// How a written day is to be understood.
struct DayWords {
  /// 8/3/2026 is August 3; without it a date in slashes is not taken, since it could be March 8.
  bool month_first = false;
  /// What "tomorrow", "Fri" and a date without its year are counted from; without it they are not
  /// taken.
  std::optional<Date> today = std::nullopt;
};

/// A day, or what is wrong with its text. Neither if the text is no day at all.
struct TypedDate {
  std::optional<Date> date = std::nullopt;
  std::string fault = {};
};

/// Reads "2026-05-14", "5/14/2026", "5/14", "May 14, 2026", "14 May", "Thu May 14", "today",
/// "tomorrow", "Fri", "this Fri". A weekday alone, or a date without its year, is the next one that
/// comes, today included; "next Fri" is refused with the two days that it may be, unless it is
/// Friday today. A weekday beside a date must be that date's.
TypedDate parse_typed_date(std::string_view text, const DayWords& words);

/// An instant as `parse_typed_instant` takes it, or such a day and a clock time: "8/3/2026 7 AM",
/// "tomorrow 6:30", "Fri at noon".
std::optional<ParsedInstant> parse_typed_instant(std::string_view text, const DayWords& words);

}  // namespace slabtide
