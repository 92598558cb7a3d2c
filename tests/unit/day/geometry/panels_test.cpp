#include <numeric>

#include <doctest/doctest.h>

#include "job/geometry/zone_geometry.h"
#include "slabtide/day/geometry/panels.h"
#include "support/sample_job.h"

// Cases checked by hand: areas and sides that can be read off the drawing.

namespace slabtide {

namespace {

double area_sum_m2(const Panels& split) {
  return std::accumulate(split.panels.begin(), split.panels.end(), 0.0,
                         [](double sum, const Panel& panel) { return sum + panel.area_m2; });
}

const Outline pad = test::rectangle(0, 0, 6, 4);

}  // namespace

TEST_CASE("without joints a zone is one panel, with the sides of its box") {
  const Panels split = split_into_panels(pad, {});
  REQUIRE(split.panels.size() == 1);
  CHECK(split.panels[0].area_m2 == doctest::Approx(24.0));
  CHECK(split.panels[0].length_m == doctest::Approx(6.0));
  CHECK(split.panels[0].width_m == doctest::Approx(4.0));
  CHECK(split.panels[0].aspect() == doctest::Approx(1.5));
}

TEST_CASE("a box lies along the panel, however the panel lies") {
  // 5 by 1, turned by the angle of a 3-4-5 triangle.
  const Panels split = split_into_panels({{0, 0}, {4, 3}, {3.4, 3.8}, {-0.6, 0.8}}, {});
  REQUIRE(split.panels.size() == 1);
  CHECK(split.panels[0].length_m == doctest::Approx(5.0));
  CHECK(split.panels[0].width_m == doctest::Approx(1.0));
}

TEST_CASE("joints across each other make four panels of two") {
  const Panels split = split_into_panels(pad, {{{2, 0}, {2, 4}}, {{0, 1}, {6, 1}}});
  REQUIRE(split.panels.size() == 4);
  CHECK(area_sum_m2(split) == doctest::Approx(24.0));
  CHECK(split.loose_joints.empty());
}

TEST_CASE("a joint may end at another joint") {
  const Panels split = split_into_panels(pad, {{{2, 0}, {2, 4}}, {{2, 2}, {6, 2}}});
  CHECK(split.panels.size() == 3);
  CHECK(area_sum_m2(split) == doctest::Approx(24.0));
  CHECK(split.loose_joints.empty());
}

TEST_CASE("a joint that ends inside a panel cuts nothing off, and is told") {
  const Panels split = split_into_panels(pad, {{{2, 0}, {2, 4}}, {{4, 0}, {4, 3}}});
  CHECK(split.panels.size() == 2);
  CHECK(split.loose_joints == std::vector<std::size_t>{1});
}

TEST_CASE("a joint drawn across the notch of an L cuts both of its legs") {
  const Outline u{{0, 0}, {6, 0}, {6, 4}, {4, 4}, {4, 1}, {2, 1}, {2, 4}, {0, 4}};
  const Panels split = split_into_panels(u, {{{-1, 2}, {7, 2}}});
  CHECK(split.panels.size() == 3);
  CHECK(area_sum_m2(split) == doctest::Approx(18.0));
}

TEST_CASE("a joint along a side, or outside, changes nothing") {
  const Panels split =
      split_into_panels(pad, {{{0, 0}, {6, 0}}, {{1, 0}, {3, 0}}, {{7, 0}, {7, 4}}});
  REQUIRE(split.panels.size() == 1);
  CHECK(split.panels[0].area_m2 == doctest::Approx(24.0));
}

TEST_CASE("a joint that ends a millimetre off a side reaches it and does not bend it") {
  const Panels split = split_into_panels(pad, {{{3, 0.001}, {3, 4.001}}});
  CHECK(split.panels.size() == 2);
  CHECK(area_sum_m2(split) == doctest::Approx(24.0).epsilon(1e-9));
}

TEST_CASE("four joints around a post make a panel of their own and a hole in the other") {
  const Panels split = split_into_panels(
      pad, {{{2, 1}, {3, 1}}, {{3, 1}, {3, 2}}, {{3, 2}, {2, 2}}, {{2, 2}, {2, 1}}});
  REQUIRE(split.panels.size() == 2);
  CHECK(area_sum_m2(split) == doctest::Approx(24.0));
  CHECK(split.loose_joints.empty());
}

}  // namespace slabtide
