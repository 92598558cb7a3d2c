#include <initializer_list>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"

#include "support/plain_forecast.h"
#include "weather/sky/shade.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_sky_view {

TEST_CASE("the sky beside a long wall") {
  struct Row {
    double height_over_distance;
    double sky_view;
  };
  // F = (1 + cos(atan(H/d)))/2, for a plane element beside an infinitely long wall; here its length
  // is 20 000 times the distance.
  constexpr Published closed_form{.what = "sky seen beside a long wall",
                                  .source = "view factor of the radiation textbooks, closed form",
                                  .tolerance = 0.000005};
  constexpr double half_length_m = 1.0e4;
  for (const Row& row : {Row{0.25, 0.98507}, Row{0.5, 0.94721}, Row{1.0, 0.85355},
                         Row{2.0, 0.72361}, Row{4.0, 0.62127}}) {
    const Surroundings place(
        {3.0, 4.0}, {slabtide::testing::wall({3.0 - half_length_m, 5.0}, {3.0 + half_length_m, 5.0},
                                             row.height_over_distance)});
    check_row(closed_form, fmt::format("height over distance {:g}", row.height_over_distance),
              row.sky_view, place.sky_view());
  }
}

}  // namespace published_sky_view
