#include "slab/process/setting.h"

#include <cmath>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {
constexpr SettingParameters plain_setting{.initial_set_h = 4.25,
                                          .final_set_h = 5.5,
                                          .shift_h = 0.0,
                                          .activation_energy_j_mol = 33.5e3,
                                          .estimated = true};

SettingParameters shifted(double hours) {
  SettingParameters setting = plain_setting;
  setting.shift_h = hours;
  return setting;
}
}  // namespace

TEST_CASE("set age grows by the clock at 73 °F") {
  CHECK(set_rate(celsius_from_fahrenheit(73.0), 33.5e3) == doctest::Approx(1.0).epsilon(1e-4));
}

TEST_CASE("set age grows by the activation energy away from 73 °F") {
  // By hand: 33500/8.314463 (1/295.93 - 1/T); T 283.15 K: -0.61453; T 308.15 K: +0.53993.
  CHECK(set_rate(10.0, 33.5e3) == doctest::Approx(std::exp(-0.61453)).epsilon(1e-4));
  CHECK(set_rate(35.0, 33.5e3) == doctest::Approx(std::exp(0.53993)).epsilon(1e-4));
}

TEST_CASE("initial and final set are 500 and 4000 psi") {
  CHECK(resistance_psi(4.25, plain_setting) == doctest::Approx(500.0));
  CHECK(resistance_psi(5.5, plain_setting) == doctest::Approx(4000.0));
}

TEST_CASE("a shift moves set and leaves its rise alone") {
  CHECK(resistance_psi(4.25 + 1.2, shifted(1.2)) == doctest::Approx(500.0));
  CHECK(resistance_psi(5.5 + 1.2, shifted(1.2)) == doctest::Approx(4000.0));
  CHECK(initial_set_age_h(shifted(-2.0)) == doctest::Approx(2.25));
  CHECK(final_set_age_h(shifted(-2.0)) == doctest::Approx(3.5));
}

TEST_CASE("nothing resists before the dormant shift has passed") {
  CHECK(resistance_psi(1.9, shifted(2.0)) == 0.0);
  CHECK(resistance_psi(2.0, shifted(2.0)) == 0.0);
  CHECK(resistance_psi(2.1, shifted(2.0)) > 0.0);
}

TEST_CASE("resistance stops where it means nothing more") {
  CHECK(resistance_psi(48.0, plain_setting) == largest_resistance_psi);
}

TEST_CASE("set age is not asked for what setting does not cover") {
  CHECK_THROWS_AS(set_age_at_resistance_h(0.0, plain_setting), std::invalid_argument);
  CHECK_THROWS_AS(set_age_at_resistance_h(20001.0, plain_setting), std::invalid_argument);
  CHECK_THROWS_AS(set_age_at_resistance_h(std::numeric_limits<double>::quiet_NaN(), plain_setting),
                  std::invalid_argument);
}
