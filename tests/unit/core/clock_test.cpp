#include "slabtide/core/clock.h"

#include <stdexcept>
#include <string>

#include <doctest/doctest.h>

#include "core/text.h"

namespace {

using namespace slabtide;

constexpr ClockStyle us_style{.hours = HourCount::twelve, .month_first = true};

Clock chicago_clock(ClockStyle style = us_style) {
  return {*TimeZone::from_posix_rule("rule", "CST6CDT,M3.2.0,M11.1.0").zone, style};
}

UtcTime utc_at(int hour, int minute, int second = 0) {
  return {Date(2026, 5, 14), Duration(hour, minute, second)};
}

const Date clock_day(2026, 5, 14);

}  // namespace

TEST_CASE("midnight is 12 AM and noon 12 PM (NIST's usage, from memory)") {
  struct Row {
    int hour;
    int minute;
    const char* twelve;
    const char* twenty_four;
  };
  for (const Row& row : {Row{0, 0, "12:00 AM", "00:00"}, Row{0, 59, "12:59 AM", "00:59"},
                         Row{1, 5, "1:05 AM", "01:05"}, Row{11, 59, "11:59 AM", "11:59"},
                         Row{12, 0, "12:00 PM", "12:00"}, Row{12, 30, "12:30 PM", "12:30"},
                         Row{13, 0, "1:00 PM", "13:00"}, Row{23, 59, "11:59 PM", "23:59"}}) {
    const Duration time(row.hour, row.minute, 0);
    CHECK(shown_time(time, HourCount::twelve) == row.twelve);
    CHECK(shown_time(time, HourCount::twenty_four) == row.twenty_four);
    CHECK(parse_clock(row.twelve) == time);
    CHECK(parse_clock(row.twenty_four) == time);
  }
  CHECK_THROWS_AS(shown_time(Duration(24, 0, 0), HourCount::twelve), std::invalid_argument);
  CHECK_THROWS_AS(shown_time(Duration(-1, 0, 0), HourCount::twelve), std::invalid_argument);
}

TEST_CASE("every minute of the day is read back as it was shown") {
  for (int minute = 0; minute < 1440; ++minute) {
    const Duration time(0, minute, 0);
    CHECK(parse_clock(shown_time(time, HourCount::twelve)) == time);
    CHECK(parse_clock(shown_time(time, HourCount::twenty_four)) == time);
  }
}

TEST_CASE("dates, month first or day first") {
  CHECK(shown_day(Date(2026, 5, 14), us_style) == "Thu, May 14");
  CHECK(shown_day(Date(2026, 5, 14), {}) == "Thu 14 May");
  CHECK(shown_date(Date(2026, 5, 14), us_style) == "Thu, May 14, 2026");
  CHECK(shown_date(Date(2026, 5, 14), {}) == "Thu 14 May 2026");
  CHECK(shown_date(Date(2026, 3, 8), {}) == "Sun 8 Mar 2026");
  CHECK(shown_date(Date(2028, 2, 29), us_style) == "Tue, Feb 29, 2028");
  CHECK(shown_date(Date(2027, 12, 31), {}) == "Fri 31 Dec 2027");
  CHECK_THROWS_AS(shown_date(Date(), us_style), std::invalid_argument);
  CHECK_THROWS_AS(shown_weekday(Date()), std::invalid_argument);
}

TEST_CASE("a clock shows the place's own time to the nearest minute") {
  CHECK(chicago_clock().time(utc_at(15, 55)) == "10:55 AM");
  CHECK(chicago_clock().time(utc_at(15, 54, 30)) == "10:55 AM");
  CHECK(chicago_clock({}).time(utc_at(15, 55)) == "10:55");
  CHECK(chicago_clock().hour(utc_at(15, 0)) == "10 AM");
  CHECK(chicago_clock().hour(utc_at(17, 0)) == "12 PM");
  CHECK(chicago_clock({}).hour(utc_at(14, 0)) == "09:00");
  CHECK(chicago_clock().date_time(utc_at(15, 55)) == "Thu, May 14, 2026, 10:55 AM");
  CHECK(chicago_clock({}).date_time(utc_at(15, 55)) == "Thu 14 May 2026 10:55");
  CHECK(chicago_clock().weekday_time(utc_at(4, 0)) == "Wed 11:00 PM");
  CHECK(chicago_clock().time_seen_from(clock_day, utc_at(4, 59, 40)) == "12:00 AM");
  CHECK(chicago_clock().time_seen_from(clock_day, utc_at(4, 0)) == "Wed 11:00 PM");
}

TEST_CASE("a span says AM and PM once where one will do") {
  const auto span = [](UtcTime from, UtcTime to) {
    return chicago_clock().span_seen_from(clock_day, from, to);
  };
  CHECK(span(utc_at(13, 10), utc_at(14, 25)) == "8:10–9:25 AM");
  CHECK(span(utc_at(16, 40), utc_at(18, 5)) == "11:40 AM–1:05 PM");
  CHECK(span(utc_at(17, 0), utc_at(18, 5)) == "12:00–1:05 PM");
  CHECK(span(utc_at(3, 0), utc_at(4, 0)) == "Wed 10:00–11:00 PM");
  CHECK(span(utc_at(4, 0), utc_at(14, 0)) == "Wed 11:00 PM–9:00 AM");
  CHECK(chicago_clock({}).span_seen_from(clock_day, utc_at(13, 10), utc_at(14, 25)) ==
        "08:10–09:25");
}

// "8" and "0800" are how a foreman says it: common practice, no source.
TEST_CASE("clock times as they are typed") {
  for (const char* const half_past :
       {"07:30", "7:30", "7:30 AM", "7:30am", "7:30 a.m.", "07:30 AM"}) {
    CHECK(parse_clock(half_past) == Duration(7, 30, 0));
  }
  CHECK(parse_clock("8 AM") == Duration(8, 0, 0));
  CHECK(parse_clock("8pm") == Duration(20, 0, 0));
  CHECK(parse_clock("12 AM") == Duration(0, 0, 0));
  CHECK(parse_clock("12pm") == Duration(12, 0, 0));
  for (const char* const eight : {"8", "08", "800", "0800", "800 AM", "0800am"}) {
    INFO(eight);
    CHECK(parse_clock(eight) == Duration(8, 0, 0));
  }
  CHECK(parse_clock("1345") == Duration(13, 45, 0));
  CHECK(parse_clock("145 PM") == Duration(13, 45, 0));
  for (const char* const noon : {"noon", "Noon", "12 noon", "12:00 noon"}) {
    INFO(noon);
    CHECK(parse_clock(noon) == Duration(12, 0, 0));
  }
  CHECK(parse_clock("midnight") == Duration(0, 0, 0));
  CHECK(parse_clock("12 midnight") == Duration(0, 0, 0));
  for (const char* const wrong : {"13 PM", "0 AM", "0:30 AM", "8 XM", "AM", "8:3 AM", "8:60 AM",
                                  "8  AM", "8 AM ", "-8 AM", "8:00:00 AM", ":30 AM", "1300 AM"}) {
    CHECK_FALSE(parse_clock(wrong));
  }
}

TEST_CASE("dates and times as they are typed") {
  const LocalTime half_past(clock_day, Duration(18, 30, 0));
  for (const char* const text : {"2026-05-14T18:30", "2026-05-14 18:30", "2026-05-14 6:30 PM",
                                 "2026-05-14T6:30pm", "2026-05-14T18:30:00"}) {
    const auto read = parse_typed_instant(text);
    REQUIRE(read);
    CHECK(read->local == half_past);
  }
  CHECK(parse_typed_instant("2026-05-14 18:30-05:00")->offset == Duration(-5, 0, 0));
  for (const char* const wrong :
       {"2026-05-14", "2026-05-14x18:30", "2026-05-14 25:00", "6:30 PM"}) {
    CHECK_FALSE(parse_typed_instant(wrong));
  }
  // What machines write stays strict.
  CHECK_FALSE(parse_instant("2026-05-14T6:30 PM"));
  CHECK_FALSE(parse_instant("2026-05-14T10 AM"));
}

TEST_CASE("a line is never broken within a time") {
  CHECK(wrap("from 10:55 AM on", 12, 0) == "from\n10:55 AM on");
  CHECK(is_within_time("at 8:00 AM", 7));
  CHECK_FALSE(is_within_time("slab 5 AMPLE", 6));
  CHECK_FALSE(is_within_time("I AM", 1));
  CHECK(wrap("from Fri 6:10 AM on", 12, 0) == "from\nFri 6:10 AM\non");
  CHECK(is_within_time("Fri 06:10", 3));
  CHECK_FALSE(is_within_time("Fri, 06:10", 4));
  CHECK_FALSE(is_within_time("bay 06:10", 3));
  CHECK_FALSE(is_within_time("Fri 6 of 10", 3));
}

TEST_CASE("a span of times is told from other dashes") {
  const auto has_span = [](std::string_view text) {
    return is_span_dash(text, text.find(en_dash));
  };
  CHECK(has_span("9:10–10:05 AM"));
  CHECK(has_span("11:40 AM–1:05 PM"));
  CHECK(has_span("Thu 11:40 PM–Fri 1:05 AM"));
  CHECK(has_span("09:10–10:05"));
  CHECK_FALSE(has_span("bays 3–5"));
  CHECK_FALSE(has_span("at 9:10 – 10:05 AM"));
  CHECK_FALSE(has_span("9:10–"));
  CHECK_FALSE(has_span("–9:10"));
}
