#include "slab/process/evaporation.h"

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

TEST_CASE("dew is left out") {
  CHECK(menzel_evaporation_kg_m2_h(1500.0, 2000.0, 3.0) == 0.0);
  CHECK(menzel_evaporation_lb_ft2_h(0.2, 0.3, 3.0) == 0.0);
  CHECK(uno_evaporation_kg_m2_h(5.0, 30.0, 1.0, 10.0) == 0.0);
  CHECK(uno_evaporation_lb_ft2_h(40.0, 90.0, 1.0, 10.0) == 0.0);
}

TEST_CASE("Uno's two forms agree to about a percent") {
  const double si = uno_evaporation_kg_m2_h(26.7, 21.1, 0.5, 16.1);
  const double us = uno_evaporation_lb_ft2_h(80.06, 69.98, 0.5, 10.004);
  CHECK(lb_ft2_h_from_kg_m2_h(si) == doctest::Approx(us).epsilon(0.015));
}

TEST_CASE("Uno's formula stops at its own zero") {
  CHECK(uno_evaporation_kg_m2_h(10.0, -30.0, 0.5, 10.0) ==
        uno_evaporation_kg_m2_h(10.0, -18.0, 0.5, 10.0));
}

TEST_CASE(
    "a surface stays wet while the paste's water reaches it, then dries as the front goes down") {
  CHECK(surface_wetness(0.0, false) == 1.0);
  CHECK(surface_wetness(1.0, false) == 1.0);
  CHECK(surface_wetness(1.3, false) == doctest::Approx(0.5));
  CHECK(surface_wetness(1.9, false) == doctest::Approx(0.25));
  CHECK(surface_wetness(4.0, false) == doctest::Approx(1.0 / 11.0));
}

TEST_CASE("a curing film leaves a twentieth") {
  CHECK(surface_wetness(0.0, true) == doctest::Approx(0.05));
  CHECK(surface_wetness(30.0, true) == doctest::Approx(1.0 / (1.0 + 29.0 / 0.3)));
}
