#include "core/typed_place.h"

#include <doctest/doctest.h>

namespace slabtide {

// The forms are those of maps on phones, from memory.
TEST_CASE("a place is read as a phone gives it") {
  for (const char* text :
       {"29.95,-90.07", "29.95, -90.07", "29.95 -90.07", "(29.95, -90.07)", "29.95° N, 90.07° W",
        "29.95°N 90.07°W", "N 29.95 W 90.07", "90.07 W, 29.95 N", "29.95° -90.07°",
        "29°57'00\"N 90°04'12\"W", "29° 57' 0.0\" N, 90° 4' 12.0\" W", "29°57′N 90°04.2′W",
        "29 57 00 N, 90 04 12 W", "29.95,−90.07", "29.95 north 90.07 west"}) {
    INFO(text);
    const auto place = parse_place(text);
    REQUIRE(place);
    CHECK(place->latitude_deg == doctest::Approx(29.95));
    CHECK(place->longitude_deg == doctest::Approx(-90.07));
  }
}

TEST_CASE("what is no place is refused") {
  for (const char* text :
       {"", "29.95", "29.95,", "29.95, 90.07, 3", "29.95 N, 90.07 N", "29.95 N, 90.07",
        "-29.95 S, 90 W", "91, 10", "10, 181", "here", "29°61'N 90°W", "29.95, -90.07 ft", "--1, 2",
        "29.95° N 90.07° W 4", "1 2 3 4 N, 5 W"}) {
    INFO(text);
    CHECK(!parse_place(text));
  }
}

TEST_CASE("an angle names its own sides alone") {
  CHECK(parse_angle_deg("29.95° N", "NS") == doctest::Approx(29.95));
  CHECK(parse_angle_deg("90.5 W", "EW") == doctest::Approx(-90.5));
  CHECK(!parse_angle_deg("90.5 W", "NS"));
}

}  // namespace slabtide
