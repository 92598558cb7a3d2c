#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include <boost/date_time/gregorian/gregorian_types.hpp>
#include <boost/date_time/posix_time/posix_time_types.hpp>

namespace slabtide {

/// An instant, in UTC. Inside the solver instants are seconds from a start.
using UtcTime = boost::posix_time::ptime;
/// A civil date and time of day at the site, with no offset.
using LocalTime = boost::posix_time::ptime;
using Duration = boost::posix_time::time_duration;
using Date = boost::gregorian::date;

double seconds_between(UtcTime from, UtcTime to);
/// `start` moved by `seconds`, rounded to the whole second. Error: std::invalid_argument if not
/// finite.
UtcTime after_seconds(UtcTime start, double seconds);
/// The nearest whole minute.
UtcTime to_minute(UtcTime time);

/// What became of a local time on its way to UTC.
enum class LocalTimeKind {
  ordinary,
  skipped,  ///< does not exist (spring forward); moved forward by the gap
  repeated  ///< happens twice (fall back); the first of the two was taken
};

struct ResolvedLocalTime {
  UtcTime utc;
  LocalTimeKind kind = LocalTimeKind::ordinary;
};

/// The civil time of a place: an IANA zone whose present rule is read from the
/// system's time-zone files. Cheap to copy.
///
/// Idealisation: the POSIX rule in the file's last line holds for all years, which is
/// right from about 2007 on for the US and is what a plan for next week needs.
/// Source: RFC 8536 (TZif), section 3.3; POSIX TZ environment variable.
class TimeZone {
 public:
  /// Where `load` failed: what was wrong, in words for the user.
  struct LoadError {
    std::string message;
    std::string next_step;
  };
  struct Loaded;

  /// UTC itself.
  TimeZone();

  /// Reads the zone `name`, such as "America/Chicago", below `zoneinfo_dir`.
  static Loaded load(std::string_view name,
                     const std::filesystem::path& zoneinfo_dir = default_zoneinfo_dir());
  /// From a POSIX TZ rule such as "CST6CDT,M3.2.0,M11.1.0" or "<+0530>-5:30".
  static Loaded from_posix_rule(std::string_view name, std::string_view rule);
  /// $TZDIR where it is set, else /usr/share/zoneinfo.
  static std::filesystem::path default_zoneinfo_dir();

  const std::string& name() const;
  /// Local minus UTC at the instant.
  Duration offset_at(UtcTime time) const;
  LocalTime local_from_utc(UtcTime time) const;
  ResolvedLocalTime utc_from_local(LocalTime local) const;

 private:
  struct Rule;
  std::shared_ptr<const Rule> rule_;
};

struct TimeZone::Loaded {
  std::optional<TimeZone> zone;
  LoadError error;
};

/// ISO 8601 with offset, to the minute: "2026-05-14T08:00-05:00".
std::string iso8601_minute(UtcTime time, const TimeZone& zone);
/// Local clock time to the minute: "08:00".
std::string clock_time(UtcTime time, const TimeZone& zone);
/// "Thu 14 May 2026".
std::string long_date(Date date);
/// "YYYY-MM-DD" read strictly; empty for anything else, an impossible day included.
std::optional<Date> parse_date(std::string_view text);
/// "HH:MM" or "H:MM" (24 hours) read strictly.
std::optional<Duration> parse_clock(std::string_view text);
/// ISO 8601 instants: "2026-05-14T08:00", ":SS" optional, "Z" or "+hh:mm" optional.
struct ParsedInstant {
  LocalTime local;
  std::optional<Duration> offset;  ///< absent where the text gives none
};
std::optional<ParsedInstant> parse_instant(std::string_view text);

}  // namespace slabtide
