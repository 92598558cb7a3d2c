#include <cmath>
#include <initializer_list>

#include <doctest/doctest.h>

#include "slabtide/weather/shade.h"
#include "support/plain_forecast.h"

using namespace slabtide;

TEST_CASE("the sky beside a long wall") {
  struct Row {
    double height_over_distance;
    double sky_view;
  };
  // F = (1 + cos(atan(H/d)))/2: view factor of a plane element beside an endless wall, closed
  // form of the radiation textbooks. Published; given to 0.00001.
  // Seen with 360 directions and a wall 20 000 distances long: under 0.00001 in all five.
  constexpr double half_length_m = 1.0e4;
  for (const Row& row : {Row{0.25, 0.98507}, Row{0.5, 0.94721}, Row{1.0, 0.85355},
                         Row{2.0, 0.72361}, Row{4.0, 0.62127}}) {
    const Surroundings place(
        {3.0, 4.0}, {slabtide::testing::wall({3.0 - half_length_m, 5.0}, {3.0 + half_length_m, 5.0},
                                             row.height_over_distance)});
    const double off = place.sky_view() - row.sky_view;
    MESSAGE("H/d ", row.height_over_distance, ": off by ", off);
    CHECK(std::abs(off) <= 0.00001);
  }
}
