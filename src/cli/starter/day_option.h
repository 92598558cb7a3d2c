#pragma once

#include <optional>
#include <string>

#include "cli/line/command_line.h"
#include "slabtide/core/time_zone.h"

// The option --date DAY, and --now, which "tomorrow" is counted from.

namespace slabtide {

/// The options' rows in a command's table.
Option day_option();
Option now_option();

/// The day of --date, or what is wrong with it or with --now. Neither if --date is not given.
struct AskedDay {
  std::optional<Date> date = std::nullopt;
  std::string fault = {};
};

/// Reads --date on the clock of the place; `month_first` as in `DayWords`.
AskedDay asked_day(const ParsedLine& line, const TimeZone& zone, bool month_first);

/// The same for a day as it is typed, with the line's --now.
AskedDay typed_day(const std::string& text, const ParsedLine& line, const TimeZone& zone,
                   bool month_first);

}  // namespace slabtide
