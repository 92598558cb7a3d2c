#include "core/posix_rule.h"

#include <string>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("offsets have the sign of local minus UTC") {
  CHECK(parse_posix_rule("CST6").rule->standard_offset_s == -21600);
  CHECK(parse_posix_rule("<+0530>-5:30").rule->standard_offset_s == 19800);
  CHECK(parse_posix_rule("UTC0").rule->standard_offset_s == 0);
  CHECK(parse_posix_rule("ABC+1:02:03").rule->standard_offset_s == -3723);
  CHECK(parse_posix_rule("ABC-24").rule->standard_offset_s == 86400);
}

TEST_CASE("daylight time is an hour ahead unless the rule says otherwise") {
  CHECK(parse_posix_rule("CST6CDT,M3.2.0,M11.1.0").rule->daylight->offset_s == -18000);
  CHECK(parse_posix_rule("IST-1GMT0,M10.5.0,M3.5.0/1").rule->daylight->offset_s == 0);
  CHECK(parse_posix_rule("<+1030>-10:30<+11>-11,M10.1.0,M4.1.0").rule->daylight->offset_s == 39600);
  CHECK_FALSE(parse_posix_rule("MST7").rule->daylight);
}

TEST_CASE("the days and hours of a change") {
  const PosixRule rule = *parse_posix_rule("AAA0BBB,M3.4.4/50,J60/-1:30").rule;
  CHECK(rule.daylight->begins.kind == RuleDay::Kind::nth_weekday);
  CHECK(rule.daylight->begins.month == 3);
  CHECK(rule.daylight->begins.week == 4);
  CHECK(rule.daylight->begins.weekday == 4);
  CHECK(rule.daylight->begins.time_s == 180000);
  CHECK(rule.daylight->ends.kind == RuleDay::Kind::day_no_leap);
  CHECK(rule.daylight->ends.day == 60);
  CHECK(rule.daylight->ends.time_s == -5400);
  const PosixRule by_number = *parse_posix_rule("AAA0BBB,0,365").rule;
  CHECK(by_number.daylight->begins.kind == RuleDay::Kind::day_with_leap);
  CHECK(by_number.daylight->begins.time_s == 7200);
  CHECK(by_number.daylight->ends.day == 365);
}

TEST_CASE("day 60 of the year is 1 March by Jn and the leap day by n") {
  // 2028-03-01T00:00:00Z is 1835481600 (date -d @1835481600 -u).
  constexpr std::int64_t first_of_march_s = 1835481600;
  constexpr std::int64_t day_s = 86400;
  const PosixRule no_leap = *parse_posix_rule("AAA0BBB,J60/0,J300/0").rule;
  CHECK(posix_offset_s(no_leap, first_of_march_s - 1) == 0);
  CHECK(posix_offset_s(no_leap, first_of_march_s) == 3600);
  const PosixRule with_leap = *parse_posix_rule("AAA0BBB,59/0,300/0").rule;
  CHECK(posix_offset_s(with_leap, first_of_march_s - day_s - 1) == 0);
  CHECK(posix_offset_s(with_leap, first_of_march_s - day_s) == 3600);
  const PosixRule before_leap_day = *parse_posix_rule("AAA0BBB,J59/0,J300/0").rule;
  CHECK(posix_offset_s(before_leap_day, first_of_march_s - 2 * day_s - 1) == 0);
  CHECK(posix_offset_s(before_leap_day, first_of_march_s - 2 * day_s) == 3600);
}

TEST_CASE("years that the calendar does not hold are standard time") {
  const PosixRule rule = *parse_posix_rule("CST6CDT,M3.2.0,M11.1.0").rule;
  for (const std::int64_t extreme : {INT64_MIN, INT64_MAX, std::int64_t{-18000000000}}) {
    CHECK(posix_offset_s(rule, extreme) == -21600);
  }
}

TEST_CASE("what is not a POSIX rule is refused, and it is said why") {
  struct Wrong {
    const char* text;
    const char* problem;
  };
  const char* const name = "the zone's short name is not three letters or more";
  const char* const offset = "the offset is not hours from UTC";
  const char* const daylight_name = "the name of daylight time is not three letters or more";
  const char* const no_begin = "it does not say when daylight time begins";
  const char* const begin = "the day daylight time begins is not a day of the year";
  const char* const end = "the day daylight time ends is not a day of the year";
  const char* const more = "something follows the end of the rule";
  for (const Wrong& wrong : {Wrong{"", name},
                             Wrong{"CS6", name},
                             Wrong{"<+03-3", name},
                             Wrong{"<+0>3", name},
                             Wrong{"6", name},
                             Wrong{"CST", offset},
                             Wrong{"CST25", offset},
                             Wrong{"CST6:60", offset},
                             Wrong{"CST--6", offset},
                             Wrong{"CST99999999999999999999", offset},
                             Wrong{"CST6,M3.2.0,M11.1.0", daylight_name},
                             Wrong{"CST6 ", daylight_name},
                             Wrong{"CST6CDT", no_begin},
                             Wrong{"CST6CDT5", no_begin},
                             Wrong{"CST6CDT,M13.2.0,M11.1.0", begin},
                             Wrong{"CST6CDT,M3.6.0,M11.1.0", begin},
                             Wrong{"CST6CDT,M3.2.7,M11.1.0", begin},
                             Wrong{"CST6CDT,J0,J300", begin},
                             Wrong{"CST6CDT,M3.2.0/168,M11.1.0", begin},
                             Wrong{"CST6CDT,M3.2.0", end},
                             Wrong{"CST6CDT,M3.2.0,366", end},
                             Wrong{"CST6CDT,M3.2.0,M11.1.0/", end},
                             Wrong{"CST6CDT,M3.2.0,M11.1.0x", more},
                             Wrong{"CST6CDTx,M3.2.0,M11.1.0 ", more}}) {
    CAPTURE(wrong.text);
    const ParsedPosixRule reading = parse_posix_rule(wrong.text);
    CHECK_FALSE(reading.rule);
    CHECK(reading.problem == wrong.problem);
  }
}
