#include <doctest/doctest.h>

#include "slabtide/day/practice/practice.h"
#include "unit/day/practice/practice_fault.h"

namespace slabtide {

TEST_CASE("the crew's rates and hands can be changed one by one") {
  const auto reading =
      read_practice("[rates]\nstamp_m2_h = 15\n[hands]\nstamp_most = 8\n", default_practice());
  REQUIRE(reading.ok());
  CHECK(reading.value->crew.rule(TaskKind::stamp).rate_per_person_h == 15.0);
  CHECK(reading.value->crew.rule(TaskKind::stamp).max_hands == 8);
  CHECK(reading.value->crew.rule(TaskKind::stamp).min_hands == 2);
  CHECK(reading.value->crew.rule(TaskKind::broom).max_hands == 2);
}

TEST_CASE("a rate of nothing and half a hand are refused where they stand") {
  CHECK(test::practice_fault("[rates]\nstamp_m2_h = 0\n") ==
        "mine.toml:2:14: rates.stamp_m2_h: got 0, expected a number from 0.1 to 10000\n"
        "    stamp_m2_h = 0\n"
        "                 ^\n");
  CHECK(test::practice_fault("[hands]\nsaw_least = 1.5\n") ==
        "mine.toml:2:13: hands.saw_least: got 1.5, expected a whole number from 1 to 50\n"
        "    saw_least = 1.5\n"
        "                ^\n");
  CHECK(test::practice_fault("[hands]\nbroom_least = 3\n") ==
        "mine.toml:2:15: hands.broom_least: got 3, expected at most 2 (hands.broom_most)\n"
        "    broom_least = 3\n"
        "                  ^\n");
  CHECK(test::practice_fault("[rates]\nstamp_ft2_h = 100\n").find("unknown entry") !=
        std::string::npos);
}

TEST_CASE("least and most hands may be the same") {
  CHECK(read_practice("[hands]\nbroom_least = 2\n", default_practice()).ok());
}

}  // namespace slabtide
