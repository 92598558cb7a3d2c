#include "day/plan/shelter.h"

#include <doctest/doctest.h>

#include "support/planned_day.h"
#include "support/sample_job.h"

// Where a crew puts up shade and screens: common practice, no source.

namespace slabtide {
namespace {

Job pad_on(double high_c, double wind_m_s, double side_m = 5.0) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, side_m, side_m))});
  TypedWeather weather = std::get<TypedWeather>(job.weather);
  weather.high_c = high_c;
  weather.low_c = high_c - 10.0;
  weather.wind_10m_m_s = wind_m_s;
  job.weather = weather;
  return job;
}

std::string why_no_shade_on(const Job& job) {
  const test::PlannedDay day(job);
  return why_no_shade(day.plan().zones[0], day.run(), day.practice().shelter, UnitSystem::us);
}

std::string words_on(const Job& job) {
  const test::PlannedDay day(job);
  return drying_shelter_words(day.plan().zones[0], day.run(), day.practice(), UnitSystem::us);
}

}  // namespace

TEST_CASE("shade is for a small slab in the sun, on a warm day without much wind") {
  CHECK(why_no_shade_on(pad_on(30.0, 3.0)).empty());
  CHECK(why_no_shade_on(pad_on(30.0, 3.0, 8.0)) == "nobody puts up shade over more than 600 ft²");
  CHECK(why_no_shade_on(pad_on(30.0, 9.0)).find("it would not stand in wind up to") == 0);
  CHECK(why_no_shade_on(pad_on(15.0, 3.0)) == "under 70 °F a slab wants the sun");
  Job shaded = pad_on(30.0, 3.0);
  shaded.zones[0].shaded = true;
  CHECK(why_no_shade_on(shaded) == "it is in the shade already");
}

TEST_CASE("no screen against no wind, no mist on a freezing day") {
  CHECK(words_on(pad_on(30.0, 6.0)) == "windbreak, shade, fog or an evaporation film");
  CHECK(words_on(pad_on(30.0, 1.0)) == "shade, fog or an evaporation film");
  CHECK(words_on(pad_on(3.0, 9.0)) == "windbreak or an evaporation film");
}

}  // namespace slabtide
