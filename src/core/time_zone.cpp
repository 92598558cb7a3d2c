#include "slabtide/core/time_zone.h"

#include <algorithm>
#include <cstdlib>
#include <stdexcept>
#include <utility>
#include <vector>

#include <fmt/format.h>

#include "posix_rule.h"
#include "slabtide/core/files.h"
#include "text.h"
#include "tzif.h"
#include "usual_city.h"
#include "utf8.h"

namespace slabtide {
namespace {

namespace fs = std::filesystem;
namespace pt = boost::posix_time;

constexpr std::size_t largest_zone_file_bytes = std::size_t{1024} * 1024;
/// Folders that repeat the other zone files.
constexpr std::string_view posix_copy = "posix";
constexpr std::string_view leap_second_copy = "right";

const pt::ptime& epoch() {
  static const pt::ptime at(boost::gregorian::date(1970, 1, 1));
  return at;
}

/// Whole seconds since 1970, rounded down.
std::int64_t unix_seconds(const pt::ptime& time) {
  if (time.is_special()) {
    throw std::invalid_argument("civil time: not a date and time");
  }
  const std::int64_t ticks = (time - epoch()).ticks();
  const std::int64_t per_second = Duration::ticks_per_second();
  return ticks / per_second - (ticks % per_second < 0 ? 1 : 0);
}

bool is_zone_name_char(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
         c == '-' || c == '+' || c == '/';
}

/// Names like "America/Port-au-Prince" or "Etc/GMT+5". Dots are not allowed, so a name cannot leave
/// the folder.
bool is_zone_name(std::string_view name) {
  return !name.empty() && !name.starts_with('/') && !name.ends_with('/') &&
         std::all_of(name.begin(), name.end(), is_zone_name_char);
}

/// Collects the zones below `dir`. Their names are capitalised; those of other files there are not.
void collect_zones(const fs::path& dir, const std::string& prefix,
                   std::vector<std::string>& names) {
  std::error_code problem;
  for (fs::directory_iterator entry(dir, problem), end; entry != end; entry.increment(problem)) {
    const std::string name = entry->path().filename().string();
    if (name == posix_copy || name == leap_second_copy) {
      continue;
    }
    if (entry->is_directory(problem)) {
      collect_zones(entry->path(), prefix + name + "/", names);
    } else if (is_zone_name(name) && name.front() >= 'A' && name.front() <= 'Z') {
      names.push_back(prefix + name);
    }
  }
}

std::string_view last_part(std::string_view name) { return name.substr(name.rfind('/') + 1); }

/// The zone that was probably meant: the name with a slip, or a place without its continent.
std::optional<std::string> suggestion(std::string_view name, const fs::path& zoneinfo_dir) {
  std::vector<std::string> names;
  collect_zones(zoneinfo_dir, "", names);
  std::sort(names.begin(), names.end());
  const std::vector<std::string_view> whole(names.begin(), names.end());
  if (const auto found = nearest(name, whole)) {
    return std::string(*found);
  }
  std::vector<std::string_view> places;
  std::transform(names.begin(), names.end(), std::back_inserter(places), last_part);
  const auto place = nearest(last_part(name), places);
  if (!place) {
    return std::nullopt;
  }
  return names[static_cast<std::size_t>(std::find(places.begin(), places.end(), *place) -
                                        places.begin())];
}

TimeZone::Loaded failed(std::string message, std::string next_step) {
  return {std::nullopt, {std::move(message), std::move(next_step)}};
}

/// Why there is no such zone, with a suggestion.
TimeZone::Loaded unknown_zone(std::string_view name, const fs::path& zoneinfo_dir) {
  std::error_code problem;
  if (!fs::is_directory(zoneinfo_dir, problem)) {
    return failed(
        fmt::format("there are no time-zone files in \"{}\"", printable(zoneinfo_dir.string())),
        "Install the package tzdata, or set TZDIR to the folder that holds them");
  }
  if (std::string city = usual_city(name); !city.empty()) {
    return failed(fmt::format("there is no time zone \"{}\"", printable(name)), std::move(city));
  }
  const std::optional<std::string> meant = suggestion(name, zoneinfo_dir);
  return failed(fmt::format("there is no time zone \"{}\"", printable(name)),
                meant ? fmt::format("Did you mean \"{}\"?", *meant)
                      : "Give a name of the IANA list, such as \"America/Chicago\"");
}

}  // namespace

struct TimeZone::History {
  std::string name;  // cppcheck-suppress unusedStructMember; it is used, as history_->name
  OffsetHistory offsets;
};

TimeZone::TimeZone() : TimeZone(std::make_shared<const History>(History{"UTC", {}})) {}

TimeZone::TimeZone(std::shared_ptr<const History> history) : history_(std::move(history)) {}

TimeZone::Loaded TimeZone::load(std::string_view name, const fs::path& zoneinfo_dir) {
  const fs::path file = zoneinfo_dir / fs::path(name);
  std::error_code problem;
  if (!is_zone_name(name) || !fs::is_regular_file(file, problem)) {
    return unknown_zone(name, zoneinfo_dir);
  }
  const FileText bytes = read_file(file, largest_zone_file_bytes);
  if (!bytes.text) {
    return failed(bytes.error.message, bytes.error.next_step);
  }
  Loaded loaded = from_tzif(name, *bytes.text);
  if (!loaded.zone) {
    loaded.error.message = fmt::format(R"(cannot use "{}" as the time zone "{}": {})",
                                       printable(file.string()), name, loaded.error.message);
  }
  return loaded;
}

TimeZone::Loaded TimeZone::from_tzif(std::string_view name, std::string_view bytes) {
  ParsedTzif reading = parse_tzif(bytes);
  if (!reading.history) {
    return failed(reading.problem, "Give a name of the IANA list, such as \"America/Chicago\"");
  }
  auto history =
      std::make_shared<const History>(History{std::string(name), std::move(*reading.history)});
  return {TimeZone(std::move(history)), {}};
}

TimeZone::Loaded TimeZone::from_posix_rule(std::string_view name, std::string_view rule) {
  const ParsedPosixRule reading = parse_posix_rule(rule);
  if (!reading.rule) {
    return failed(fmt::format("the time-zone rule \"{}\" is not understood: {}", printable(rule),
                              reading.problem),
                  "Write it as in \"CST6CDT,M3.2.0,M11.1.0\", hours west of Greenwich positive");
  }
  auto history = std::make_shared<const History>(
      History{std::string(name), {.first_name = {}, .changes = {}, .rule = *reading.rule}});
  return {TimeZone(std::move(history)), {}};
}

fs::path TimeZone::default_zoneinfo_dir() {
  const char* const dir = std::getenv("TZDIR");
  return dir != nullptr && *dir != '\0' ? dir : "/usr/share/zoneinfo";
}

const std::string& TimeZone::name() const { return history_->name; }

Duration TimeZone::offset_at(UtcTime time) const {
  return pt::seconds(history_->offsets.offset_s(unix_seconds(time)));
}

const std::string& TimeZone::abbreviation(UtcTime time) const {
  return history_->offsets.name(unix_seconds(time));
}

LocalTime TimeZone::local_from_utc(UtcTime time) const { return time + offset_at(time); }

ResolvedLocalTime TimeZone::utc_from_local(LocalTime local) const {
  // Offsets are under 24 hours, so these are the ones before and after any change near `local`.
  const Duration before = offset_at(local - pt::hours(24));
  const Duration after = offset_at(local + pt::hours(24));
  const UtcTime by_before = local - before;
  const UtcTime by_after = local - after;
  const bool before_fits = offset_at(by_before) == before;
  const bool after_fits = offset_at(by_after) == after;
  if (before_fits && after_fits && before != after) {
    return {std::min(by_before, by_after), LocalTimeKind::repeated};
  }
  if (!before_fits && !after_fits) {
    return {by_before, LocalTimeKind::skipped};
  }
  return {before_fits ? by_before : by_after, LocalTimeKind::ordinary};
}

}  // namespace slabtide
