#include "core/typed_date.h"

#include <doctest/doctest.h>

namespace slabtide {

namespace {

/// A Wednesday.
const Date today(2026, 5, 13);
const DayWords us{true, today};

TypedDate read(std::string_view text) { return parse_typed_date(text, us); }

}  // namespace

// The forms are those people write in the United States: common practice, no source.
TEST_CASE("a day is read as people write it") {
  for (const char* text :
       {"2026-08-03", "2026-8-3", "8/3/2026", "08/03/2026", "8/3/26", "8-3-2026", "8/3", "Aug 3",
        "August 3, 2026", "3 Aug 2026", "aug. 3rd", "Mon, Aug 3, 2026", "Monday 8/3"}) {
    INFO(text);
    CHECK(read(text).date == Date(2026, 8, 3));
  }
}

TEST_CASE("a day is counted from today") {
  CHECK(read("today").date == today);
  CHECK(read("Tomorrow").date == Date(2026, 5, 14));
  CHECK(read("Wed").date == today);
  CHECK(read("Thurs").date == Date(2026, 5, 14));
  CHECK(read("tuesday").date == Date(2026, 5, 19));
  CHECK(read("5/13").date == today);
  CHECK(read("5/12").date == Date(2027, 5, 12));
  CHECK(read("Feb 29").date == Date(2028, 2, 29));
}

// Common practice, no source: on a Wednesday "next Friday" is the day after tomorrow to some and
// nine days off to others.
TEST_CASE("this Friday is the one that comes, next Friday is asked about") {
  for (const char* text : {"this Fri", "This Friday", "coming Friday", "on fri", "Friday"}) {
    INFO(text);
    CHECK(read(text).date == Date(2026, 5, 15));
  }
  CHECK(read("this Wed").date == today);
  CHECK(read("next Wednesday").date == Date(2026, 5, 20));
  CHECK(!read("next Friday").date);
  CHECK(read("next Friday").fault ==
        "\"next Friday\" may be Fri, May 15 or Fri, May 22: write which");
  CHECK(read("Fri, May 22").date == Date(2026, 5, 22));
  CHECK(!parse_typed_date("next Fri", {true, std::nullopt}).fault.empty());
}

TEST_CASE("what needs today's date is refused without it") {
  for (const char* text : {"today", "tomorrow", "Fri", "8/3", "Aug 3"}) {
    INFO(text);
    const TypedDate typed = parse_typed_date(text, {true, std::nullopt});
    CHECK(!typed.date);
    CHECK(!typed.fault.empty());
  }
}

TEST_CASE("a date in slashes is taken only where the month stands first") {
  CHECK(!parse_typed_date("8/3/2026", {false, today}).date);
  CHECK(parse_typed_date("3 Aug 2026", {false, today}).date == Date(2026, 8, 3));
}

TEST_CASE("a day that cannot be is told") {
  CHECK(read("Fri, Aug 3, 2026").fault == "Aug 3, 2026 is a Monday, not a Friday");
  CHECK(read("2/30/2026").fault == "there is no 2/30/2026 (month, day, year)");
  for (const char* text : {"", "soon", "32", "May", "8/3/2026/1", "May 14 15", "next week", "1:2",
                           "this May 14", "this"}) {
    INFO(text);
    CHECK(!read(text).date);
    CHECK(read(text).fault.empty());
  }
}

TEST_CASE("a day and an hour") {
  const auto at = [](std::string_view text) { return parse_typed_instant(text, us); };
  REQUIRE(at("tomorrow 6:30"));
  CHECK(at("tomorrow 6:30")->local ==
        LocalTime(Date(2026, 5, 14), boost::posix_time::time_duration(6, 30, 0)));
  CHECK(at("8/3/2026 7 AM")->local ==
        LocalTime(Date(2026, 8, 3), boost::posix_time::time_duration(7, 0, 0)));
  CHECK(at("Thu, May 14, 2026, 7:05 PM")->local ==
        LocalTime(Date(2026, 5, 14), boost::posix_time::time_duration(19, 5, 0)));
  CHECK(!at("tomorrow"));
  for (const char* text : {"this Fri 0800", "Fri 8", "Fri at 8 AM", "5/15 800", "2026-05-15 8"}) {
    INFO(text);
    REQUIRE(at(text));
    CHECK(at(text)->local ==
          LocalTime(Date(2026, 5, 15), boost::posix_time::time_duration(8, 0, 0)));
  }
  CHECK(at("tomorrow noon")->local ==
        LocalTime(Date(2026, 5, 14), boost::posix_time::time_duration(12, 0, 0)));
  // The year of a day is no hour of it.
  CHECK(!at("May 14, 2026"));
  CHECK(!at("14 May 2026"));
}

}  // namespace slabtide
