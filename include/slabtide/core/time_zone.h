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

/// Years of civil time accepted: one year inside the range of Boost.Date_Time at both ends, so that
/// the day before and the day after always exist.
inline constexpr int min_year = 1401;
inline constexpr int max_year = 9998;

/// An instant, in UTC. The solver counts seconds from a start instead.
using UtcTime = boost::posix_time::ptime;
/// A civil date and time of day at the site, with no offset.
using LocalTime = boost::posix_time::ptime;
/// A span of civil time, whole seconds.
using Duration = boost::posix_time::time_duration;
/// A day of the Gregorian calendar.
using Date = boost::gregorian::date;

/// How a local time was converted to UTC.
enum class LocalTimeKind {
  ordinary,
  skipped,  ///< does not exist (spring forward); moved forward by the gap
  repeated  ///< happens twice (fall back); the first of the two was taken
};

/// The instant of a local time, and whether it was unambiguous.
struct ResolvedLocalTime {
  UtcTime utc;
  LocalTimeKind kind = LocalTimeKind::ordinary;
};

/// The civil time of a place: an IANA zone read from the system's time-zone files. The listed
/// changes apply first; after the last of them, the POSIX rule in the file's last line. (The rule
/// alone would be wrong for a zone whose rule changed recently.) Cheap to copy.
///
/// Range: instants of the years 1401 to 9998.
/// Source: RFC 8536 (TZif), section 3; POSIX TZ environment variable.
class TimeZone {
 public:
  /// Why `load` failed, in words for the user.
  struct LoadError {
    std::string message;
    std::string next_step;
  };
  struct Loaded;

  /// UTC itself.
  TimeZone();

  /// Reads the zone `name`, such as "America/Chicago", from below `zoneinfo_dir`.
  static Loaded load(std::string_view name,
                     const std::filesystem::path& zoneinfo_dir = default_zoneinfo_dir());
  /// From the bytes of the zone's file (TZif).
  static Loaded from_tzif(std::string_view name, std::string_view bytes);
  /// From a POSIX TZ rule such as "CST6CDT,M3.2.0,M11.1.0" or "<+0530>-5:30".
  static Loaded from_posix_rule(std::string_view name, std::string_view rule);
  /// $TZDIR if set, else /usr/share/zoneinfo.
  static std::filesystem::path default_zoneinfo_dir();

  const std::string& name() const;
  /// Local minus UTC at the instant.
  Duration offset_at(UtcTime time) const;
  LocalTime local_from_utc(UtcTime time) const;
  /// What civil time is called at the instant, as the zone's file says: "EDT", or "+11".
  const std::string& abbreviation(UtcTime time) const;
  ResolvedLocalTime utc_from_local(LocalTime local) const;

 private:
  struct History;
  explicit TimeZone(std::shared_ptr<const History> history);
  std::shared_ptr<const History> history_;
};

/// The zone, or why it could not be loaded.
struct TimeZone::Loaded {
  std::optional<TimeZone> zone;
  LoadError error;
};

/// Loads the time zone of a name such as "America/Chicago".
using TimeZoneLoader = std::function<TimeZone::Loaded(std::string_view name)>;

}  // namespace slabtide
