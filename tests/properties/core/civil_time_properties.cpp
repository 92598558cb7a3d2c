#include <array>
#include <cstdint>
#include <string>

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <rapidcheck.h>

#include "core/posix_rule.h"
#include "slabtide/core/civil_time.h"

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
