#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include <boost/date_time/gregorian/gregorian_types.hpp>
#include <boost/date_time/posix_time/posix_time_types.hpp>

namespace slabtide {

/// Years of civil time: a year short of what Boost.Date_Time holds to either side, so that the day
/// before and after are still there.
inline constexpr int min_year = 1401;
inline constexpr int max_year = 9998;

/// An instant, in UTC. Inside the solver instants are seconds from a start.
using UtcTime = boost::posix_time::ptime;
/// A civil date and time of day at the site, with no offset.
using LocalTime = boost::posix_time::ptime;
/// A span of civil time, whole seconds.
using Duration = boost::posix_time::time_duration;
/// A day of the Gregorian calendar.
using Date = boost::gregorian::date;

/// What became of a local time on its way to UTC.
enum class LocalTimeKind {
  ordinary,
  skipped,  ///< does not exist (spring forward); moved forward by the gap
  repeated  ///< happens twice (fall back); the first of the two was taken
};

/// The instant of a local time, and whether that was one instant.
struct ResolvedLocalTime {
  UtcTime utc;
  LocalTimeKind kind = LocalTimeKind::ordinary;
};

/// The civil time of a place: an IANA zone read from the system's time-zone files, their
/// listed changes first and after these the POSIX rule of their last line. The rule alone
/// would be wrong wherever it has just changed. Cheap to copy.
///
/// Range: instants of the years 1401 to 9998.
/// Source: RFC 8536 (TZif), section 3; POSIX TZ environment variable.
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
  struct History;
  explicit TimeZone(std::shared_ptr<const History> history);
  std::shared_ptr<const History> history_;
};

/// The zone, or why there is none.
struct TimeZone::Loaded {
  std::optional<TimeZone> zone;
  LoadError error;
};

/// Gives the time zone of a name such as "America/Chicago".
using TimeZoneLoader = std::function<TimeZone::Loaded(std::string_view name)>;

}  // namespace slabtide
