#include <doctest/doctest.h>

#include <cmath>
#include <stdexcept>

#include "slabtide/day/compare/crossing.h"

namespace slabtide {

TEST_CASE("a single turn is found to the width asked for, from both sides") {
  const Crossing rising = find_crossing([](double x) { return x > 3.3; }, -10, 10, 11, 0.1, 1);
  REQUIRE(rising.once());
  CHECK(!rising.at_least);
  CHECK(rising.at_most);
  CHECK(std::abs(rising.turns[0] - 3.3) <= 0.05);
  const Crossing falling = find_crossing([](double x) { return x < -7.9; }, -10, 10, 11, 0.1, 1);
  REQUIRE(falling.once());
  CHECK(falling.at_least);
  CHECK(std::abs(falling.turns[0] + 7.9) <= 0.05);
}

TEST_CASE("what never turns and what turns twice is told") {
  CHECK(find_crossing([](double) { return true; }, -10, 10, 11, 0.1, 1).never());
  const Crossing band =
      find_crossing([](double x) { return x > -3.0 && x < 5.0; }, -10, 10, 11, 0.1, 1);
  REQUIRE(band.turns.size() == 2);
  CHECK(std::abs(band.turns[0] + 3.0) <= 0.05);
  CHECK(std::abs(band.turns[1] - 5.0) <= 0.05);
}

TEST_CASE("the turn is the same for any number of threads") {
  const auto holds = [](double x) { return std::sin(x) > 0.3; };
  const Crossing one = find_crossing(holds, -10, 10, 41, 0.01, 1);
  CHECK(one.turns.size() > 4);
  CHECK(find_crossing(holds, -10, 10, 41, 0.01, 4).turns == one.turns);
}

TEST_CASE("a range that is none is refused") {
  const auto holds = [](double) { return true; };
  CHECK_THROWS_AS(find_crossing(holds, 1, 1, 11, 0.1, 1), std::invalid_argument);
  CHECK_THROWS_AS(find_crossing(holds, 0, NAN, 11, 0.1, 1), std::invalid_argument);
  CHECK_THROWS_AS(find_crossing(holds, 0, 1, 1, 0.1, 1), std::invalid_argument);
  CHECK_THROWS_AS(find_crossing(holds, 0, 1, 11, 0.0, 1), std::invalid_argument);
}

}  // namespace slabtide
