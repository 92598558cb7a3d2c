#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace slabtide {

/// The day of a year on which the clocks change, and when on that day.
struct RuleDay {
  enum class Kind {
    nth_weekday,   ///< Mm.w.d: the w-th (5: last) weekday d (0 Sunday) of month m
    day_no_leap,   ///< Jn: day 1 to 365, 29 February never counted
    day_with_leap  ///< n: day 0 to 365, 29 February counted
  };
  Kind kind = Kind::nth_weekday;
  int month = 1;
  int week = 1;
  int weekday = 0;
  int day = 0;
  /// Local time before the change, -167 to 167 hours from midnight of that day.
  std::int64_t time_s = 7200;
};

/// Daylight saving time: its offset (local minus UTC) and when it applies.
struct DaylightTime {
  std::string name;           ///< "CDT"
  std::int64_t offset_s = 0;  ///< may be less than that of standard time (Europe/Dublin)
  RuleDay begins;
  RuleDay ends;
};

/// A POSIX TZ rule. Offsets are local minus UTC, the opposite sign of the text's.
/// Source: IEEE Std 1003.1, chapter 8.3 (TZ); RFC 8536, section 3.3.1 for hours beyond 0 to 24.
///
/// Evaluated here rather than by Boost's posix_time_zone, which rejects much of what zone files
/// contain: quoted names (<-03>3), and hours below 0 or over 24 (/-1, /50).
struct PosixRule {
  std::string standard_name;  ///< "CST"
  std::int64_t standard_offset_s = 0;
  std::optional<DaylightTime> daylight;
};

/// A rule, or why the text is not one.
struct ParsedPosixRule {
  std::optional<PosixRule> rule;
  std::string problem;  ///< in words, if there is no rule
};

/// Reads a rule such as "CST6CDT,M3.2.0,M11.1.0" or "<+0530>-5:30".
ParsedPosixRule parse_posix_rule(std::string_view text);

/// Local minus UTC at the instant (seconds since 1970). Years outside 1401 to 9998 use standard
/// time.
std::int64_t posix_offset_s(const PosixRule& rule, std::int64_t utc_s);
/// What civil time is called then: "CDT".
const std::string& posix_name(const PosixRule& rule, std::int64_t utc_s);

}  // namespace slabtide
