#include <doctest/doctest.h>

#include "day/geometry/corners.h"
#include "job/geometry/zone_geometry.h"
#include "support/sample_job.h"

namespace slabtide {

TEST_CASE("an L has a corner that points inward, a rectangle has none") {
  CHECK(re_entrant_corners(test::rectangle(0, 0, 6, 4)).empty());
  const auto corners = re_entrant_corners({{0, 0}, {6, 0}, {6, 2}, {3, 2}, {3, 4}, {0, 4}});
  REQUIRE(corners.size() == 1);
  CHECK(corners[0] == Point{3, 2});
}

TEST_CASE("a walk's sharp bend has one, on its inside; a curve drawn in short pieces has none") {
  const auto sharp = re_entrant_corners(outline_of_walkway({{{0, 0}, {6, 0}, {6, 4}}, 1.2}));
  REQUIRE(sharp.size() == 1);
  CHECK(sharp[0].x_m == doctest::Approx(5.4));
  CHECK(sharp[0].y_m == doctest::Approx(0.6));
  // Bends of 14 degrees.
  CHECK(re_entrant_corners(outline_of_walkway({{{0, 0}, {4, 0}, {8, 1}, {11.7, 3}}, 1.2})).empty());
}

}  // namespace slabtide
