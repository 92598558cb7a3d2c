#include "slabtide/report/words/outlook_facts.h"

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("an hour with rain never reads as one without") {
  OutlookHour hour;
  CHECK(rain_words(hour) == "-");
  hour.rain_mm_h = 0.4;  // a forecast that gives amounts but no chances
  CHECK(rain_words(hour) == "wet");
  hour.rain_chance = 0.3;
  CHECK(rain_words(hour) == "30");
  hour.rain_mm_h = 0.0;
  CHECK(rain_words(hour) == "30");
  hour.rain_chance = 0.004;
  CHECK(rain_words(hour) == "-");
}
