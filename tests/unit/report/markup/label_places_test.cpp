#include "report/markup/label_places.h"

#include <cmath>

#include <doctest/doctest.h>

namespace slabtide {
namespace {

TEST_CASE("a label takes room by its columns, east Asian letters two") {
  CHECK(label_box(0, 0, "walk", 10.0).width == doctest::Approx(4 * 5.8));
  CHECK(label_box(0, 0, "東", 10.0).width == doctest::Approx(2 * 5.8));
}

TEST_CASE("the first label stands, a later one only where it is free") {
  LabelPlaces places;
  CHECK(places.claim({10, 10, 20, 10}));
  CHECK_FALSE(places.claim({29, 10, 20, 10}));
  CHECK(places.claim({31, 10, 20, 10}));
  CHECK(places.claim({10, 21, 20, 10}));
}

TEST_CASE("a label at an edge moves into the frame") {
  const LabelBox moved = LabelBox{98, 1, 20, 10}.within(100, 50, 2);
  CHECK(moved.x == 88.0);
  CHECK(moved.y == 5.0);
  const LabelBox stays = LabelBox{50, 25, 20, 10}.within(100, 50, 2);
  CHECK(stays.x == 50.0);
  CHECK(stays.y == 25.0);
}

TEST_CASE("labels are spread in their order") {
  CHECK(spread_labels({50, 20, 55}, 10, 0, 100) == std::vector<double>{50, 20, 60});
  // Pushed off the low end, and back from the high end.
  CHECK(spread_labels({1, 2, 3}, 10, 5, 100) == std::vector<double>{5, 15, 25});
  CHECK(spread_labels({98, 99}, 10, 0, 100) == std::vector<double>{90, 100});
  CHECK(spread_labels({}, 10, 0, 100).empty());
}

}  // namespace
TEST_CASE("the nearest free place lies in the frame and off what is taken") {
  LabelPlaces places;
  const LabelBox wanted{50, 50, 20, 20};
  CHECK(places.nearest_free(wanted, 100, 100)->x == 50);
  places.take({50, 50, 60, 20});
  const auto beside = places.nearest_free(wanted, 100, 100);
  REQUIRE(beside);
  CHECK(places.is_free(*beside));
  CHECK(std::abs(beside->y - 50) == doctest::Approx(20));
  const auto right =
      places.nearest_free(wanted, 100, 100, [](const LabelBox& box) { return box.x > 85; });
  REQUIRE(right);
  CHECK(right->x == doctest::Approx(90));
  places.take({50, 50, 100, 100});
  CHECK_FALSE(places.nearest_free(wanted, 100, 100));
}

}  // namespace slabtide
