#include "slabtide/core/clock.h"

#include <array>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>

namespace slabtide {

namespace {

constexpr int half_day_hours = 12;
constexpr int day_hours = 24;

std::string_view half_of_day(int hour) { return hour < half_day_hours ? "AM" : "PM"; }

/// The hour as a face with twelve of them counts it.
int hour_of_twelve(int hour) {
  return hour % half_day_hours == 0 ? half_day_hours : hour % half_day_hours;
}

void require_date(Date date) {
  if (date.is_special()) throw std::invalid_argument("clock: not a date");
}

LocalTime local_minute(UtcTime time, const TimeZone& zone) {
  return zone.local_from_utc(to_minute(time));
}

/// What the time is called in an hour that comes twice when the clocks go back, so that no span
/// seems to go backwards: " EDT"; else nothing.
std::string name_if_repeated(UtcTime time, const TimeZone& zone) {
  const bool repeated =
      zone.utc_from_local(local_minute(time, zone)).kind == LocalTimeKind::repeated;
  return repeated ? " " + zone.abbreviation(to_minute(time)) : std::string();
}

/// The same time without its AM or PM.
std::string without_half(std::string time) {
  constexpr std::size_t half_letters = 3;
  time.resize(time.size() - half_letters);
  return time;
}

}  // namespace

std::optional<HourCount> parse_hour_count(std::string_view text) {
  if (text == "12") return HourCount::twelve;
  if (text == "24") return HourCount::twenty_four;
  return std::nullopt;
}

std::string shown_time(Duration time_of_day, HourCount hours) {
  const auto hour = static_cast<int>(time_of_day.hours());
  const auto minute = static_cast<int>(time_of_day.minutes());
  if (time_of_day.is_special() || time_of_day.is_negative() || hour >= day_hours) {
    throw std::invalid_argument("shown_time: not a time of day");
  }
  if (hours == HourCount::twenty_four) return fmt::format("{:02}:{:02}", hour, minute);
  return fmt::format("{}:{:02} {}", hour_of_twelve(hour), minute, half_of_day(hour));
}

std::string shown_weekday(Date date) {
  constexpr std::array weekdays{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"};
  require_date(date);
  return weekdays.at(date.day_of_week().as_number());
}

std::string shown_day(Date date, const ClockStyle& style) {
  constexpr std::array months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                              "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
  require_date(date);
  const auto ymd = date.year_month_day();
  const auto* const month = months.at(ymd.month.as_number() - 1U);
  const int day = ymd.day.as_number();
  return style.month_first ? fmt::format("{}, {} {}", shown_weekday(date), month, day)
                           : fmt::format("{} {} {}", shown_weekday(date), day, month);
}

std::string shown_date(Date date, const ClockStyle& style) {
  const std::string day = shown_day(date, style);
  return fmt::format("{}{} {}", day, style.month_first ? "," : "", static_cast<int>(date.year()));
}

Date Clock::day(UtcTime time) const { return local_minute(time, zone).date(); }

std::string Clock::time(UtcTime time) const {
  return shown_time(local_minute(time, zone).time_of_day(), style.hours) +
         name_if_repeated(time, zone);
}

std::string Clock::hour(UtcTime time) const {
  const auto hour = static_cast<int>(local_minute(time, zone).time_of_day().hours());
  return style.hours == HourCount::twelve
             ? fmt::format("{} {}", hour_of_twelve(hour), half_of_day(hour))
             : fmt::format("{:02}:00", hour);
}

std::string Clock::weekday_time(UtcTime time) const {
  return fmt::format("{} {}", shown_weekday(day(time)), this->time(time));
}

std::string Clock::date_time(UtcTime time) const {
  return fmt::format("{}{} {}", date(time), style.month_first ? "," : "", this->time(time));
}

std::string Clock::time_seen_from(Date home, UtcTime time) const {
  return day(time) == home ? this->time(time) : weekday_time(time);
}

ShownSpan Clock::ends_seen_from(Date home, UtcTime from, UtcTime to) const {
  const bool one_day = day(from) == day(to);
  const std::string end = one_day ? time(to) : time_seen_from(home, to);
  std::string begin = time_seen_from(home, from);
  const bool one_half =
      half_of_day(static_cast<int>(local_minute(from, zone).time_of_day().hours())) ==
      half_of_day(static_cast<int>(local_minute(to, zone).time_of_day().hours()));
  const bool plain = name_if_repeated(from, zone).empty() && name_if_repeated(to, zone).empty();
  if (style.hours == HourCount::twelve && one_day && one_half && plain) begin = without_half(begin);
  return {begin, end};
}

std::string Clock::span_seen_from(Date home, UtcTime from, UtcTime to) const {
  const ShownSpan ends = ends_seen_from(home, from, to);
  return ends.from + "–" + ends.to;
}

}  // namespace slabtide
