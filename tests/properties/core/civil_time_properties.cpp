#include <algorithm>
#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <rapidcheck.h>

#include "core/posix_rule.h"
#include "slabtide/core/civil_time.h"
#include "slabtide/core/clock.h"

namespace {

using namespace slabtide;
namespace pt = boost::posix_time;

/// An offset as POSIX writes it, in quarter hours like real ones.
std::string offset_text(int quarter_hours) {
  return fmt::format("{}{}:{:02}", quarter_hours < 0 ? "-" : "", std::abs(quarter_hours) / 4,
                     std::abs(quarter_hours) % 4 * 15);
}

/// A day of the months [first, last] in any of the three forms, with a time.
std::string day_text(int first, int last) {
  const int month = *rc::gen::inRange(first, last + 1);
  const int day = month * 30 - *rc::gen::inRange(0, 29);
  const std::array forms{
      fmt::format("M{}.{}.{}", month, *rc::gen::inRange(1, 6), *rc::gen::inRange(0, 7)),
      fmt::format("J{}", day), fmt::format("{}", day)};
  const std::string form = *rc::gen::elementOf(forms);
  return *rc::gen::arbitrary<bool>() ? form
                                     : fmt::format("{}/{}", form, *rc::gen::inRange(-24, 73));
}

/// Rules like those in zone files, for both hemispheres, with daylight time ahead or behind by a
/// quarter to two hours; or without daylight time.
std::string any_rule(bool always_daylight = false) {
  const int standard = *rc::gen::inRange(-14 * 4, 12 * 4 + 1);
  const char* const name = *rc::gen::element("<+00>", "<-0330>", "ABC");
  std::string rule = fmt::format("{}{}", name, offset_text(standard));
  if (!always_daylight && *rc::gen::inRange(0, 5) == 0) {
    return rule;
  }
  const int shift = *rc::gen::inRange(1, 9) * *rc::gen::element(-1, 1);
  const std::string spring = day_text(2, 5);
  const std::string autumn = day_text(8, 11);
  rule += "XDT" + offset_text(standard + shift);
  return *rc::gen::arbitrary<bool>() ? fmt::format("{},{},{}", rule, spring, autumn)
                                     : fmt::format("{},{},{}", rule, autumn, spring);
}

/// Each clock time of a night, every ten minutes, in its order.
std::vector<std::string> clocks_of(const TimeZone& zone, UtcTime from, int hours) {
  std::vector<std::string> clocks;
  for (int i = 0; i < hours * 6; ++i) {
    clocks.push_back(Clock{zone, {}}.time(from + pt::minutes(10 * i)));
  }
  return clocks;
}

TimeZone any_zone(bool always_daylight = false) {
  const std::string rule = any_rule(always_daylight);
  RC_LOG() << rule << "\n";
  const TimeZone::Loaded loaded = TimeZone::from_posix_rule("any", rule);
  RC_ASSERT(loaded.zone.has_value());
  return *loaded.zone;
}

UtcTime any_instant() {
  constexpr int sixty_years_d = 21915;
  const Date day = Date(2000, 1, 1) + boost::gregorian::days(*rc::gen::inRange(0, sixty_years_d));
  return UtcTime(day) + pt::seconds(*rc::gen::inRange(0, 86400));
}

/// An instant from half an hour before a change to two hours after it, to the second; any instant
/// if no change is found.
UtcTime instant_near_change(const TimeZone& zone) {
  UtcTime low = any_instant();
  UtcTime high = low;
  for (int days = 0; days < 365 && zone.offset_at(high) == zone.offset_at(low); days += 50) {
    high += pt::hours(24 * 50);
  }
  if (zone.offset_at(low) == zone.offset_at(high)) {
    return low;
  }
  while (high - low > pt::seconds(1)) {
    const UtcTime middle = low + (high - low) / 2;
    (zone.offset_at(middle) == zone.offset_at(low) ? low : high) = middle;
  }
  return high + pt::seconds(*rc::gen::inRange(-1800, 7200));
}

}  // namespace

TEST_CASE("UTC to local and back is the same instant, or the first of two an offset apart") {
  CHECK(rc::check([] {
    const TimeZone zone = any_zone();
    const UtcTime time = *rc::gen::arbitrary<bool>() ? any_instant() : instant_near_change(zone);
    const LocalTime local = zone.local_from_utc(time);
    const ResolvedLocalTime back = zone.utc_from_local(local);
    RC_ASSERT(back.kind != LocalTimeKind::skipped);
    RC_ASSERT(zone.local_from_utc(back.utc) == local);
    RC_TAG(back.kind == LocalTimeKind::repeated ? "repeated" : "ordinary");
    if (back.kind == LocalTimeKind::ordinary) {
      RC_ASSERT(back.utc == time);
    } else {
      RC_ASSERT(back.utc <= time);
      RC_ASSERT(zone.offset_at(back.utc) > zone.offset_at(back.utc + pt::hours(24)));
    }
  }));
}

TEST_CASE("a local time is skipped where no instant has it, and moves forward by the gap") {
  CHECK(rc::check([] {
    const TimeZone zone = any_zone(true);
    const UtcTime near = instant_near_change(zone);
    const LocalTime local = near + zone.offset_at(near - pt::hours(6));
    const ResolvedLocalTime found = zone.utc_from_local(local);
    const Duration moved = zone.local_from_utc(found.utc) - local;
    RC_TAG(found.kind == LocalTimeKind::skipped ? "skipped" : "there");
    if (found.kind == LocalTimeKind::skipped) {
      const Duration gap = zone.offset_at(found.utc) - zone.offset_at(found.utc - pt::hours(24));
      RC_ASSERT(moved > pt::seconds(0));
      RC_ASSERT(moved == gap);
    } else {
      RC_ASSERT(moved == pt::seconds(0));
    }
  }));
}

TEST_CASE("the offset is always standard or daylight time's, and changes twice a year at most") {
  CHECK(rc::check([] {
    const std::string text = any_rule();
    const PosixRule rule = *parse_posix_rule(text).rule;
    const int year = *rc::gen::inRange(1950, 2100);
    const std::int64_t start_s =
        (UtcTime(Date(static_cast<unsigned short>(year), 1, 20)) - UtcTime(Date(1970, 1, 1)))
            .total_seconds();
    int changes = 0;
    std::int64_t last = posix_offset_s(rule, start_s);
    for (int hour = 0; hour <= 365 * 24; hour += 6) {
      const std::int64_t now = posix_offset_s(rule, start_s + hour * std::int64_t{3600});
      RC_ASSERT(now == rule.standard_offset_s || (rule.daylight && now == rule.daylight->offset_s));
      changes += now == last ? 0 : 1;
      last = now;
    }
    RC_ASSERT(changes == (rule.daylight ? 2 : 0));
  }));
}

TEST_CASE("what is written is read back to the minute") {
  CHECK(rc::check([] {
    const TimeZone zone = any_zone();
    const UtcTime time = any_instant();
    const auto read = parse_instant(iso8601_minute(time, zone));
    RC_ASSERT(read.has_value());
    RC_ASSERT(read->offset.has_value());
    RC_ASSERT(read->local - *read->offset == to_minute(time));
    const auto clock = parse_clock(clock_time(time, zone));
    RC_ASSERT(clock == read->local.time_of_day());
  }));
}

TEST_CASE("moving by seconds and measuring agree to half a second") {
  CHECK(rc::check([] {
    const UtcTime start = any_instant();
    const double seconds = *rc::gen::inRange(-1000000000, 1000000000) / 7.0;
    const double measured = seconds_between(start, after_seconds(start, seconds));
    RC_ASSERT(std::abs(measured - seconds) <= 0.5);
  }));
}

// The nights on which clocks change. The zone's file says when; the dates are those of the rules in
// force (US Energy Policy Act of 2005; EU directive 2000/84/EC; New South Wales), from memory.
TEST_CASE("no clock comes twice in a night, and none that the night does not have") {
  struct Night {
    const char* zone;
    Date date;
    std::string_view before;  ///< what time is called, where an hour comes twice
    std::string_view after;
  };
  const std::array nights{Night{"America/New_York", Date(2026, 11, 1), "EDT", "EST"},
                          Night{"America/Chicago", Date(2031, 11, 2), "CDT", "CST"},
                          Night{"Europe/Berlin", Date(2026, 10, 25), "CEST", "CET"},
                          Night{"Australia/Sydney", Date(2026, 4, 5), "AEDT", "AEST"},
                          Night{"Australia/Lord_Howe", Date(2026, 4, 5), "+11", "+1030"},
                          Night{"America/New_York", Date(2026, 3, 8), "", ""},
                          Night{"America/Denver", Date(2040, 3, 11), "", ""},
                          Night{"Europe/Berlin", Date(2026, 3, 29), "", ""},
                          Night{"Australia/Sydney", Date(2026, 10, 4), "", ""},
                          Night{"America/Phoenix", Date(2026, 11, 1), "", ""}};
  for (const Night& night : nights) {
    CAPTURE(night.zone);
    CAPTURE(night.date);
    const TimeZone zone = *TimeZone::load(night.zone).zone;
    const UtcTime midnight = zone.utc_from_local(LocalTime(night.date)).utc;
    const std::vector<std::string> clocks = clocks_of(zone, midnight, 6);
    std::size_t first = 0;
    std::size_t second = 0;
    for (std::size_t i = 0; i < clocks.size(); ++i) {
      CAPTURE(clocks[i]);
      CHECK(std::count(clocks.begin(), clocks.end(), clocks[i]) == 1);
      const auto clock = parse_clock(clocks[i].substr(0, 5));
      const auto back = zone.utc_from_local(LocalTime(night.date, *clock));
      CHECK(back.kind != LocalTimeKind::skipped);
      CHECK((back.kind == LocalTimeKind::repeated) == (clocks[i].size() > 5));
      if (clocks[i].size() == 5) CHECK(back.utc == midnight + pt::minutes(10 * i));
      first += clocks[i].substr(5) == fmt::format(" {}", night.before) ? 1 : 0;
      second += clocks[i].substr(5) == fmt::format(" {}", night.after) ? 1 : 0;
      // The offset is told in any case.
      const std::string iso = iso8601_minute(midnight + pt::minutes(10 * i), zone);
      const auto parsed = parse_instant(iso);
      REQUIRE(parsed.has_value());
      CHECK(parsed->local - *parsed->offset == midnight + pt::minutes(10 * i));
    }
    CHECK(first == second);
    CHECK((first > 0) == !night.before.empty());
  }
}

TEST_CASE("of any zone, clocks in their order never seem to go back unless their names differ") {
  CHECK(rc::check([] {
    const TimeZone zone = any_zone();
    const UtcTime from = any_instant();
    const std::vector<std::string> clocks = clocks_of(zone, from, 4);
    for (std::size_t i = 0; i + 1 < clocks.size(); ++i) {
      if (clocks[i + 1].size() > 5 || clocks[i].size() > 5) continue;
      const Duration on = *parse_clock(clocks[i + 1]) - *parse_clock(clocks[i]);
      RC_ASSERT(!on.is_negative() || on < pt::hours(-20));  // past midnight
    }
  }));
}
