#include "slabtide/core/civil_time.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

namespace pt = boost::posix_time;

constexpr int am_pm_hours = 12;
constexpr double longest_move_s = 1000.0 * 365.2425 * 86400.0;

void require_instant(const pt::ptime& time) {
  if (time.is_special()) {
    throw std::invalid_argument("civil time: not a date and time");
  }
}

/// The number in `text` if it is exactly `count` digits and at most `max`.
std::optional<int> digits(std::string_view text, std::size_t count, int max) {
  int value = 0;
  const bool all_digits =
      std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
  if (text.size() != count || !all_digits) {
    return std::nullopt;
  }
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value <= max ? std::optional(value) : std::nullopt;
}

}  // namespace

double seconds_between(UtcTime from, UtcTime to) {
  require_instant(from);
  require_instant(to);
  const Duration between = to - from;
  return static_cast<double>(between.ticks()) / static_cast<double>(Duration::ticks_per_second());
}

UtcTime after_seconds(UtcTime start, double seconds) {
  require_instant(start);
  if (!(std::abs(seconds) <= longest_move_s)) {
    throw std::invalid_argument("after_seconds: not a number of seconds within 1000 years");
  }
  return start + pt::seconds(std::llround(seconds));
}

UtcTime to_minute(UtcTime time) {
  require_instant(time);
  const Duration minute = pt::minutes(1);
  const Duration past = pt::time_duration(0, 0, 0, time.time_of_day().ticks() % minute.ticks());
  return past * 2 < minute ? time - past : time - past + minute;
}

std::string iso8601_minute(UtcTime time, const TimeZone& zone) {
  const UtcTime minute = to_minute(time);
  const auto ymd = zone.local_from_utc(minute).date().year_month_day();
  const auto offset_min = zone.offset_at(minute).total_seconds() / 60;
  return fmt::format("{:04}-{:02}-{:02}T{}:00{}{:02}:{:02}", static_cast<int>(ymd.year),
                     ymd.month.as_number(), ymd.day.as_number(), clock_time(minute, zone),
                     offset_min < 0 ? '-' : '+', std::abs(offset_min) / minutes_per_hour,
                     std::abs(offset_min) % minutes_per_hour);
}

std::string clock_time(UtcTime time, const TimeZone& zone) {
  const Duration clock = zone.local_from_utc(to_minute(time)).time_of_day();
  return fmt::format("{:02}:{:02}", clock.hours(), clock.minutes());
}

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
    return std::nullopt;
  }
  const std::optional<int> year = digits(text.substr(0, 4), 4, max_year);
  const std::optional<int> month = digits(text.substr(5, 2), 2, 12);
  const std::optional<int> day = digits(text.substr(8, 2), 2, 31);
  if (!year || *year < min_year || !month || !day) {
    return std::nullopt;
  }
  try {
    return Date(static_cast<unsigned short>(*year), static_cast<unsigned short>(*month),
                static_cast<unsigned short>(*day));
  } catch (const std::out_of_range&) {  // Boost reports a day that does not exist this way
    return std::nullopt;
  }
}

namespace {

/// "HH:MM" or "H:MM", 24 hours.
std::optional<Duration> parse_plain_clock(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon != 1 && colon != 2) {
    return std::nullopt;
  }
  const std::optional<int> hour = digits(text.substr(0, colon), colon, 23);
  const std::optional<int> minute = digits(text.substr(colon + 1), 2, 59);
  if (!hour || !minute) {
    return std::nullopt;
  }
  return pt::hours(*hour) + pt::minutes(*minute);
}

/// Whether the text is the word, given in lower case.
bool same_letters(std::string_view text, std::string_view word) {
  return std::equal(text.begin(), text.end(), word.begin(), word.end(), [](char c, char lower) {
    return (c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c) == lower;
  });
}

/// Which half of the day the text names: "AM", "pm", "a.m.", "p".
std::optional<int> parse_half(std::string_view text) {
  std::string letters;
  for (const char c : text) {
    if (c != '.') letters += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  }
  if (letters == "am" || letters == "a") return 0;
  if (letters == "pm" || letters == "p") return 1;
  return std::nullopt;
}

/// Without a colon: "8", and "0800" or "800", whose last two digits are the minutes.
std::optional<Duration> parse_bare_clock(std::string_view text) {
  constexpr std::size_t hour_digits = 2;
  constexpr std::size_t most_digits = 4;
  if (text.empty() || text.size() > most_digits) return std::nullopt;
  const std::size_t split = text.size() > hour_digits ? text.size() - 2 : text.size();
  const std::optional<int> hour = digits(text.substr(0, split), split, 23);
  const std::optional<int> minute =
      split == text.size() ? std::optional(0) : digits(text.substr(split), 2, 59);
  if (!hour || !minute) return std::nullopt;
  return pt::hours(*hour) + pt::minutes(*minute);
}

/// "7:30", "730" or "7".
std::optional<Duration> parse_face(std::string_view text) {
  const std::optional<Duration> plain = parse_plain_clock(text);
  return plain ? plain : parse_bare_clock(text);
}

/// "noon", "12 noon", "midnight".
std::optional<Duration> parse_clock_word(std::string_view text) {
  for (const std::string_view twelve : {"12:00 ", "12 "}) {
    if (!text.starts_with(twelve)) continue;
    text.remove_prefix(twelve.size());
    break;
  }
  if (same_letters(text, "noon")) return pt::hours(am_pm_hours);
  if (same_letters(text, "midnight")) return Duration(0, 0, 0);
  return std::nullopt;
}

/// "7:30 AM", "7:30am", "730 AM", "8 AM".
std::optional<Duration> parse_half_day_clock(std::string_view text) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789:"), text.size());
  std::string_view half_text = text.substr(end);
  if (half_text.starts_with(' ')) half_text.remove_prefix(1);
  const std::optional<int> half = parse_half(half_text);
  const std::optional<Duration> clock = parse_face(text.substr(0, end));
  if (!half || !clock || clock->hours() < 1 || clock->hours() > am_pm_hours) {
    return std::nullopt;
  }
  const long half_days = *half;
  return pt::hours(clock->hours() % am_pm_hours + half_days * am_pm_hours) +
         pt::minutes(clock->minutes());
}

}  // namespace

std::optional<Duration> parse_clock(std::string_view text) {
  if (const auto face = parse_face(text)) return face;
  const std::optional<Duration> half = parse_half_day_clock(text);
  return half ? half : parse_clock_word(text);
}

bool is_half_of_day(std::string_view text) {
  return parse_half(text) || same_letters(text, "noon") || same_letters(text, "midnight");
}

namespace {

/// "HH:MM" with both digits of the hour.
std::optional<Duration> parse_full_clock(std::string_view text) {
  return text.size() == 5 ? parse_plain_clock(text) : std::nullopt;
}

/// "Z" or "+hh:mm"; empty where it is neither.
std::optional<Duration> parse_offset(std::string_view text) {
  if (text == "Z") {
    return Duration(0, 0, 0);
  }
  if (!text.starts_with('+') && !text.starts_with('-')) {
    return std::nullopt;
  }
  const std::optional<Duration> size = parse_full_clock(text.substr(1));
  return size && text.front() == '-' ? std::optional(-*size) : size;
}

}  // namespace

std::optional<ParsedInstant> parse_instant(std::string_view text) {
  if (text.size() < 16 || text[10] != 'T') {
    return std::nullopt;
  }
  const std::optional<Date> date = parse_date(text.substr(0, 10));
  std::optional<Duration> clock = parse_full_clock(text.substr(11, 5));
  if (!date || !clock) {
    return std::nullopt;
  }
  text.remove_prefix(16);
  if (text.starts_with(':')) {
    const std::optional<int> second = digits(text.substr(1, 2), 2, 59);
    if (!second) {
      return std::nullopt;
    }
    *clock += pt::seconds(*second);
    text.remove_prefix(3);
  }
  const std::optional<Duration> offset = parse_offset(text);
  if (!text.empty() && !offset) {
    return std::nullopt;
  }
  return ParsedInstant{.local = LocalTime(*date, *clock), .offset = offset};
}

std::optional<ParsedInstant> parse_typed_instant(std::string_view text) {
  constexpr std::size_t date_length = 10;
  if (text.size() <= date_length) return std::nullopt;
  std::string iso(text);
  if (iso[date_length] == ' ') iso[date_length] = 'T';
  if (const auto instant = parse_instant(iso)) return instant;
  const std::optional<Date> date = parse_date(text.substr(0, date_length));
  const std::optional<Duration> clock = parse_clock(text.substr(date_length + 1));
  if (!date || !clock || iso[date_length] != 'T') return std::nullopt;
  return ParsedInstant{.local = LocalTime(*date, *clock), .offset = std::nullopt};
}

}  // namespace slabtide
