#include "slab/process/evaporation.h"

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {
constexpr SettingParameters slow_with_shift{.initial_set_h = 4.0,
                                            .final_set_h = 6.0,
                                            .shift_h = 1.0,
                                            .activation_energy_j_mol = 33.5e3,
                                            .estimated = true};
}

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

TEST_CASE("a surface is wet to initial set and keeps a tenth from final set on") {
  CHECK(surface_wetness(2.0, slow_with_shift, false) == 1.0);
  CHECK(surface_wetness(5.0, slow_with_shift, false) == 1.0);
  CHECK(surface_wetness(6.0, slow_with_shift, false) == doctest::Approx(0.55));
  CHECK(surface_wetness(7.0, slow_with_shift, false) == doctest::Approx(0.1));
  CHECK(surface_wetness(30.0, slow_with_shift, false) == doctest::Approx(0.1));
}

TEST_CASE("a curing film leaves a twentieth") {
  CHECK(surface_wetness(2.0, slow_with_shift, true) == doctest::Approx(0.05));
  CHECK(surface_wetness(30.0, slow_with_shift, true) == doctest::Approx(0.05));
}
