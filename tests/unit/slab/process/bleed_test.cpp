#include "slab/process/bleed.h"

#include <doctest/doctest.h>

#include "slab/material/materials.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {
constexpr SettingParameters slow_setting{.initial_set_h = 4.0,
                                         .final_set_h = 6.0,
                                         .shift_h = 0.0,
                                         .activation_energy_j_mol = 33.5e3,
                                         .estimated = true};
}

TEST_CASE("bleed water grows with w/cm and is none in a very dry mix") {
  Mix mix;
  mix.air_fraction = 0.02;
  mix.w_cm = 0.45;
  CHECK(total_bleed_kg_m2_per_mm(mix) == doctest::Approx(0.051 * 0.45 - 0.015));
  mix.w_cm = 0.29;
  CHECK(total_bleed_kg_m2_per_mm(mix) == 0.0);
}

TEST_CASE("a permeable base takes bleed water, plastic and foam board do not") {
  const auto up = [](BaseKind kind, double depth_m = 0.1, bool plastic = false) {
    Base base;
    base.kind = kind;
    base.depth_m = depth_m;
    base.plastic = plastic;
    return bleed_up_fraction(base);
  };
  CHECK(up(BaseKind::gravel) == 0.8);
  CHECK(up(BaseKind::sand) == 0.8);
  CHECK(up(BaseKind::soil) == 0.9);
  CHECK(up(BaseKind::gravel, 0.0) == 0.9);
  CHECK(up(BaseKind::insulation) == 1.0);
  CHECK(up(BaseKind::gravel, 0.1, true) == 1.0);
}

TEST_CASE("entrained air and silica fume hold it back") {
  Mix mix;
  mix.air_fraction = 0.02;
  const double plain_mm = total_bleed_kg_m2_per_mm(mix);
  mix.air_fraction = 0.04;
  CHECK(total_bleed_kg_m2_per_mm(mix) == doctest::Approx(0.6 * plain_mm));
  mix.silica_fume_fraction = 0.05;
  CHECK(total_bleed_kg_m2_per_mm(mix) == doctest::Approx(0.15 * plain_mm));
}

TEST_CASE("bleeding is fast at first and over at three quarters of initial set") {
  CHECK(bleed_fraction(0.0, 0.0, 0.0, slow_setting) == 0.0);
  CHECK(bleed_fraction(1.5, 0.0, 0.0, slow_setting) == doctest::Approx(0.75));
  CHECK(bleed_fraction(3.0, 0.0, 0.0, slow_setting) == 1.0);
  CHECK(bleed_fraction(9.0, 0.0, 0.0, slow_setting) == 1.0);
}

TEST_CASE("bleeding begins when placed: the drum stirs back what rose on the way") {
  CHECK(bleed_fraction(1.0, 1.0, 0.0, slow_setting) == 0.0);
  CHECK(bleed_fraction(2.0, 1.0, 0.0, slow_setting) == doctest::Approx(0.75));
  CHECK(bleed_fraction(3.0, 1.0, 0.0, slow_setting) == 1.0);
}

TEST_CASE("concrete that is placed too stiff to bleed does not") {
  for (const double age_h : {3.0, 3.5, 4.0, 9.0})
    CHECK(bleed_fraction(age_h, 3.0, 0.0, slow_setting) == 1.0);
  CHECK(bleed_fraction(3.5, 3.5, 0.0, slow_setting) == 1.0);
}

TEST_CASE("a retarder stretches bleeding") {
  SettingParameters retarded = slow_setting;
  retarded.shift_h = 2.0;
  CHECK(bleed_fraction(4.4, 0.0, 0.0, retarded) < 1.0);
  CHECK(bleed_fraction(4.5, 0.0, 0.0, retarded) == doctest::Approx(1.0));
}

TEST_CASE("bleeding ends when the solids have settled, where that is before set") {
  CHECK(bleed_fraction(0.5, 0.0, 0.5, slow_setting) == doctest::Approx(0.75));
  CHECK(bleed_fraction(0.5, 0.0, 1.0, slow_setting) == 1.0);
  CHECK(bleed_fraction(0.5, 0.0, 7.0, slow_setting) == 1.0);
  CHECK(bleed_fraction(1.5, 0.0, 0.1, slow_setting) == doctest::Approx(0.75));  // setting is ahead
}

TEST_CASE("a slab settles as long as it is thick, and by the viscosity of water") {
  CHECK(settling_time_h(0.1) == doctest::Approx(1.8));
  CHECK(settling_time_h(0.2) == doctest::Approx(3.6));
  // Handbook values, mPa s.
  CHECK(settling_rate(20.0) == doctest::Approx(1.0));
  CHECK(settling_rate(0.0) == doctest::Approx(1.002 / 1.787).epsilon(0.06));
  CHECK(settling_rate(10.0) == doctest::Approx(1.002 / 1.307).epsilon(0.03));
  CHECK(settling_rate(30.0) == doctest::Approx(1.002 / 0.798).epsilon(0.03));
  CHECK(settling_rate(40.0) == doctest::Approx(1.002 / 0.653).epsilon(0.03));
}
