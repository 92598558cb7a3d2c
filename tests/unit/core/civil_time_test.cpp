#include "slabtide/core/civil_time.h"

#include <limits>
#include <string>

#include <doctest/doctest.h>

namespace {

using namespace slabtide;
namespace pt = boost::posix_time;

TimeZone posix_zone(const char* text) { return *TimeZone::from_posix_rule("rule", text).zone; }

UtcTime at(int hour, int minute, int second = 0) {
  return {Date(2026, 5, 14), Duration(hour, minute, second)};
}

}  // namespace

TEST_CASE("seconds between instants, and back") {
  CHECK(seconds_between(at(8, 0), at(9, 30)) == 5400.0);
  CHECK(seconds_between(at(9, 30), at(8, 0)) == -5400.0);
  CHECK(seconds_between(at(8, 0), at(8, 0) + pt::milliseconds(250)) == 0.25);
  CHECK(seconds_between(UtcTime(Date(1970, 1, 1)), UtcTime(Date(2370, 1, 1))) == 12622780800.0);
  CHECK(after_seconds(at(8, 0), 5400.0) == at(9, 30));
  CHECK(after_seconds(at(8, 0), 0.5) == at(8, 0, 1));
  CHECK(after_seconds(at(8, 0), 0.49) == at(8, 0));
  CHECK(after_seconds(at(8, 0), -0.5) == at(7, 59, 59));
}

TEST_CASE("seconds that are no number are refused") {
  for (const double wrong : {std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity(), -1.0e30, 3.2e10}) {
    CHECK_THROWS_AS(after_seconds(at(8, 0), wrong), std::invalid_argument);
  }
  CHECK_THROWS_AS(after_seconds(UtcTime(), 1.0), std::invalid_argument);
  CHECK_THROWS_AS(seconds_between(at(8, 0), UtcTime()), std::invalid_argument);
  CHECK_THROWS_AS(to_minute(UtcTime()), std::invalid_argument);
}

TEST_CASE("the nearest minute, halves up") {
  CHECK(to_minute(at(8, 0, 29)) == at(8, 0));
  CHECK(to_minute(at(8, 0, 30)) == at(8, 1));
  CHECK(to_minute(at(8, 0, 30) - pt::microseconds(1)) == at(8, 0));
  CHECK(to_minute(at(8, 7)) == at(8, 7));
  CHECK(to_minute(at(23, 59, 45)) == UtcTime(Date(2026, 5, 15)));
}

TEST_CASE("ISO 8601 and clock times are local, to the minute") {
  const TimeZone chicago = posix_zone("CST6CDT,M3.2.0,M11.1.0");
  CHECK(iso8601_minute(at(13, 0), chicago) == "2026-05-14T08:00:00-05:00");
  CHECK(iso8601_minute(at(2, 5, 31), chicago) == "2026-05-13T21:06:00-05:00");
  CHECK(clock_time(at(13, 0), chicago) == "08:00");
  CHECK(clock_time(at(4, 59, 40), chicago) == "00:00");
  CHECK(iso8601_minute(at(13, 0), TimeZone()) == "2026-05-14T13:00:00+00:00");
  CHECK(iso8601_minute(at(13, 0), posix_zone("<+0530>-5:30")) == "2026-05-14T18:30:00+05:30");
  CHECK(iso8601_minute(at(13, 0), posix_zone("<-0030>0:30")) == "2026-05-14T12:30:00-00:30");
}

TEST_CASE("the hour that comes twice is told apart by its offset") {
  const TimeZone chicago = posix_zone("CST6CDT,M3.2.0,M11.1.0");
  const UtcTime first(Date(2026, 11, 1), Duration(6, 30, 0));
  CHECK(iso8601_minute(first, chicago) == "2026-11-01T01:30:00-05:00");
  CHECK(iso8601_minute(first + pt::hours(1), chicago) == "2026-11-01T01:30:00-06:00");
  // A time that rounds up to the minute of the change has the offset after the change.
  CHECK(iso8601_minute(first + pt::seconds(1799), chicago) == "2026-11-01T01:00:00-06:00");
}

TEST_CASE("dates are read strictly") {
  CHECK(parse_date("2026-05-14") == Date(2026, 5, 14));
  CHECK(parse_date("2028-02-29") == Date(2028, 2, 29));
  for (const char* wrong :
       {"", "2026-5-14", "26-05-14", "2026-05-14 ", " 2026-05-14", "2026/05/14", "14-05-2026",
        "2026-02-30", "2027-02-29", "2026-13-01", "2026-00-10", "2026-01-00", "2026-01-32",
        "2026-+5-14", "2026-05-1x", "0000-01-01", "20260514", "2026-05-14T08:00"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_date(wrong));
  }
}

TEST_CASE("clock times are read strictly") {
  CHECK(parse_clock("08:00") == Duration(8, 0, 0));
  CHECK(parse_clock("8:00") == Duration(8, 0, 0));
  CHECK(parse_clock("00:00") == Duration(0, 0, 0));
  CHECK(parse_clock("23:59") == Duration(23, 59, 0));
  for (const char* wrong :
       {"",           "24",        "2400",  "860",   "08000",   "24:00", "8:60",      "8:5",
        "8:005",      "008:00",    "-8:00", "+8:00", " 8:00",   "8:00 ", "8:00 noon", "8 noon",
        "12 12 noon", "afternoon", "8.00",  ":30",   "8:00:00", "x:00",  "-8",        "8.5"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_clock(wrong));
  }
}

TEST_CASE("instants are read with and without seconds and offset") {
  const auto plain = parse_instant("2026-05-14T08:00");
  CHECK(plain->local == at(8, 0));
  CHECK_FALSE(plain->offset);
  CHECK(parse_instant("2026-05-14T08:00:30")->local == at(8, 0, 30));
  CHECK(parse_instant("2026-05-14T08:00Z")->offset == Duration(0, 0, 0));
  CHECK(parse_instant("2026-05-14T08:00:00Z")->offset == Duration(0, 0, 0));
  CHECK(parse_instant("2026-05-14T08:00-05:00")->offset == Duration(-5, 0, 0));
  CHECK(parse_instant("2026-05-14T08:00-00:30")->offset == Duration(0, -30, 0));
  CHECK(parse_instant("2026-05-14T08:00:59+05:45")->offset == Duration(5, 45, 0));
  CHECK(parse_instant("2026-05-14T08:00:59+05:45")->local == at(8, 0, 59));
}

TEST_CASE("what is not an instant is refused") {
  for (const char* wrong : {"",
                            "2026-05-14",
                            "2026-05-14T",
                            "2026-05-14T8:00",
                            "2026-05-14 08:00",
                            "2026-05-14t08:00",
                            "2026-05-14T24:00",
                            "2026-05-14T08:60",
                            "2026-05-14T08:00:60",
                            "2026-05-14T08:00:",
                            "2026-05-14T08:00:5",
                            "2026-05-14T08:00:00.5",
                            "2026-05-14T08:00z",
                            "2026-05-14T08:00+5",
                            "2026-05-14T08:00+05",
                            "2026-05-14T08:00+0500",
                            "2026-05-14T08:00+5:00",
                            "2026-05-14T08:00+24:00",
                            "2026-05-14T08:00+-5:00",
                            "2026-05-14T08:00ZZ",
                            "2026-02-30T08:00",
                            "2026-05-14T08:00 "}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_instant(wrong));
  }
}

TEST_CASE("what is written is read back") {
  const TimeZone chicago = posix_zone("CST6CDT,M3.2.0,M11.1.0");
  const auto read = parse_instant(iso8601_minute(at(13, 7), chicago));
  CHECK(read->local - *read->offset == at(13, 7));
}
