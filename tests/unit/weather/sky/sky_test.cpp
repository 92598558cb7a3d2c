#include "weather/sky/sky.h"

#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("a clouded or moist sky sends down more, never more than a black body") {
  CHECK(sky_emissivity(10.0, 0.5) > sky_emissivity(10.0, 0.0));
  CHECK(sky_emissivity(15.0, 0.0) > sky_emissivity(10.0, 0.0));
  CHECK(sky_emissivity(35.0, 1.0) == 1.0);
  CHECK(sky_emissivity(-100.0, 0.0) > 0.0);
}

TEST_CASE("the sky refuses what cannot be") {
  const double not_a_number = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(sky_emissivity(not_a_number, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(sky_emissivity(-300.0, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(sky_emissivity(10.0, 1.01), std::invalid_argument);
  CHECK_THROWS_AS(sky_emissivity(10.0, not_a_number), std::invalid_argument);
}
