#include "slab/stress/curl.h"

#include <algorithm>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("a short piece is free to curl and a very long one is not") {
  CHECK(curl_coefficient(0.0) == 0.0);
  CHECK(curl_coefficient(0.01) == doctest::Approx(0.0));
  CHECK(curl_coefficient(0.5) < 1.0e-3);
  CHECK(curl_coefficient(100.0) == doctest::Approx(1.0));
  CHECK(curl_coefficient(5000.0) == 1.0);
}

TEST_CASE("the coefficient never passes its largest") {
  double max = 0.0;
  for (int i = 0; i < 4000; ++i) max = std::max(max, curl_coefficient(0.01 * i));
  CHECK(max <= largest_curl_coefficient);
  CHECK(max > largest_curl_coefficient - 1.0e-6);
}

TEST_CASE("radius of relative stiffness, worked by hand") {
  // E 20 GPa, h 0.1 m, k 40 MPa/m: (2e10 1e-3 / (12 0.9775 4e7))^(1/4) = (0.0426257)^(1/4)
  CHECK(relative_stiffness_radius_m(20.0e9, 0.1, 40.0e6) == doctest::Approx(0.45438).epsilon(1e-4));
}

TEST_CASE("curling refuses what is no slab") {
  CHECK_THROWS_AS(curl_coefficient(-1.0), std::invalid_argument);
  CHECK_THROWS_AS(curl_coefficient(std::numeric_limits<double>::quiet_NaN()),
                  std::invalid_argument);
  CHECK_THROWS_AS(relative_stiffness_radius_m(0.0, 0.1, 4e7), std::invalid_argument);
}
