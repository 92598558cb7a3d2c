#include <doctest/doctest.h>

#include "job_text.h"

namespace slabtide::test {

TEST_CASE("prices, for the amounts of either system") {
  CHECK(!read(plain_job()).prices);
  const Job us = read(plain_job() + R"(
[prices]
hand_per_hour = 50
concrete = 165
short_load = 120
retarder_per_gal = 32
ice = "0.40/lb"
redo = 12
crack_repair_per_m = 60
)");
  REQUIRE(us.prices);
  CHECK(us.prices->currency == "$");
  CHECK(us.prices->hand_per_h == 50.0);
  CHECK(*us.prices->concrete_per_m3 == doctest::Approx(165.0 / 0.764554857984));
  CHECK(us.prices->short_load == 120.0);
  CHECK(*us.prices->retarder_per_l == doctest::Approx(32.0 / 3.785411784));
  CHECK(*us.prices->ice_per_kg == doctest::Approx(0.40 / 0.45359237));
  CHECK(*us.prices->redo_per_m2 == doctest::Approx(12.0 / 0.09290304));
  CHECK(us.prices->repair_per_m == 60.0);
  CHECK(!us.prices->film_per_m2);
  CHECK(*read(plain_job() + "[prices]\nretarder = 0.25\n").prices->retarder_per_l ==
        doctest::Approx(0.25 / 0.0295735295625));
}

}  // namespace slabtide::test
