#include "times.h"
#include "job/model/limits.h"

#include <cmath>
#include <string>

#include <fmt/format.h>

namespace slabtide {

namespace {

/// A time as written, before it is converted to an instant.
struct WrittenTime {
  LocalTime local;
  std::optional<Duration> offset;
  bool dated = false;
};

/// The text of a string, of one of TOML's own dates and times, or of a whole number, as in
/// start = 8; empty for anything else.
std::string text_of(const TomlValue& value) {
  if (const auto* const number = std::get_if<double>(&value.held)) {
    return *number == std::floor(*number) ? fmt::format("{:.0f}", *number) : std::string();
  }
  if (const auto* const text = std::get_if<std::string>(&value.held)) return *text;
  if (const auto* const moment = std::get_if<TomlMoment>(&value.held)) return moment->text;
  return {};
}

/// TOML requires seconds in its times; a plan to the minute does not use them.
std::string_view without_seconds(std::string_view clock) {
  constexpr std::string_view no_seconds = ":00";
  constexpr std::size_t hours_minutes_seconds = 8;
  if (clock.size() == hours_minutes_seconds && clock.ends_with(no_seconds)) {
    clock.remove_suffix(no_seconds.size());
  }
  return clock;
}

/// How days are written in a file of these units.
DayWords words_in(const TableReader& table) { return {table.units() == UnitSystem::us}; }

std::optional<WrittenTime> parse_time(std::string_view text, Date date, const DayWords& words) {
  if (const auto clock = parse_clock(without_seconds(text))) {
    return WrittenTime{LocalTime(date, *clock), std::nullopt, false};
  }
  if (const auto instant = parse_typed_instant(text, words)) {
    return WrittenTime{instant->local, instant->offset, true};
  }
  return std::nullopt;
}

std::optional<WrittenTime> written_time(TableReader& table, std::string_view key,
                                        const PourDay& day, Presence presence) {
  const TomlEntry* const entry = table.entry(key, presence);
  if (entry == nullptr || day.date.is_special()) return std::nullopt;
  auto time = parse_time(text_of(entry->value), day.date, words_in(table));
  if (!time) {
    table.error(key,
                fmt::format(R"(got {}, expected a time of day such as "7:30 AM" or "07:30")",
                            shown(entry->value)),
                "for another day write the date too, such as \"2026-05-15 7:00 AM\"");
  }
  return time;
}

std::optional<UtcTime> resolve(TableReader& table, std::string_view key, const PourDay& day,
                               const WrittenTime& time) {
  if (time.offset) return time.local - *time.offset;
  const auto resolved = day.clock.zone.utc_from_local(time.local);
  const ClockStyle& style = day.clock.style;
  const auto when = fmt::format("{} on {}", shown_time(time.local.time_of_day(), style.hours),
                                shown_date(time.local.date(), style));
  if (resolved.kind == LocalTimeKind::skipped) {
    table.error(
        key, fmt::format("there is no {}: the clocks go forward over it", when),
        fmt::format("{} is the same moment on the new clock", day.clock.time(resolved.utc)));
    return std::nullopt;
  }
  if (resolved.kind == LocalTimeKind::repeated) {
    table.warning(key, fmt::format("{} comes twice, the first is taken", when),
                  fmt::format("say which with its offset, such as \"{}\"",
                              iso8601_minute(resolved.utc, day.clock.zone)));
  }
  return resolved.utc;
}

}  // namespace

TypedDate parse_pour_date(std::string_view text, const DayWords& words) {
  TypedDate typed = parse_typed_date(text, words);
  if (typed.date && !limits::years.holds(static_cast<double>(typed.date->year())))
    typed.date.reset();
  return typed;
}

std::string expected_pour_date() {
  return fmt::format("a date from {:.0f} to {:.0f} such as 2026-05-14", limits::years.low,
                     limits::years.high);
}

std::optional<Date> read_date(TableReader& table, std::string_view key, Presence presence) {
  const TomlEntry* const entry = table.entry(key, presence);
  if (entry == nullptr) return std::nullopt;
  const TypedDate typed = parse_pour_date(text_of(entry->value), words_in(table));
  if (!typed.date) {
    table.error(key, fmt::format("got {}, expected {}", shown(entry->value), expected_pour_date()),
                typed.fault);
  }
  return typed.date;
}

std::optional<UtcTime> read_time(TableReader& table, std::string_view key, const PourDay& day,
                                 Presence presence) {
  const auto time = written_time(table, key, day, presence);
  if (!time) return std::nullopt;
  return resolve(table, key, day, *time);
}

std::optional<UtcTime> read_time_after(TableReader& table, std::string_view key, const PourDay& day,
                                       UtcTime earlier) {
  auto time = written_time(table, key, day, Presence::optional);
  if (!time) return std::nullopt;
  if (!time->dated && day.clock.zone.utc_from_local(time->local).utc <= earlier) {
    time->local += boost::gregorian::days(1);
  }
  return resolve(table, key, day, *time);
}

std::optional<int> read_time_of_day(TableReader& table, std::string_view key) {
  const TomlEntry* const entry = table.entry(key);
  if (entry == nullptr) return std::nullopt;
  const std::string text = text_of(entry->value);
  if (const auto clock = parse_clock(without_seconds(text))) {
    return static_cast<int>(clock->total_seconds() / 60);
  }
  table.error(key,
              fmt::format(R"(got {}, expected a time of day such as "7:30 AM" or "07:30")",
                          shown(entry->value)),
              "it applies on every day of the job");
  return std::nullopt;
}

}  // namespace slabtide
