#include "slab/process/strength.h"

#include <cmath>

#include <doctest/doctest.h>

#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {
constexpr SettingParameters plain_with_shift{.initial_set_h = 4.25,
                                             .final_set_h = 5.5,
                                             .shift_h = 1.0,
                                             .activation_energy_j_mol = 33.5e3,
                                             .estimated = true};
}

TEST_CASE("strength starts 1.3 h of set age before final set, admixture included") {
  const StrengthParameters strength = strength_parameters(4000.0, plain_with_shift);
  CHECK(strength.start_set_age_h == doctest::Approx(5.2));
  CHECK(strength_psi(5.2, strength) == 0.0);
  CHECK(strength_psi(3.0, strength) == 0.0);
  CHECK(strength_psi(5.3, strength) > 0.0);
}

TEST_CASE("a mix is ordered over what is specified") {
  CHECK(usual_strength_margin_psi(2500.0) == 1000.0);
  CHECK(usual_strength_margin_psi(3000.0) == 1200.0);
  CHECK(usual_strength_margin_psi(5000.0) == 1200.0);
  CHECK(usual_strength_margin_psi(6000.0) == doctest::Approx(1300.0));
}

TEST_CASE("strength is half of its ultimate at 1/k days") {
  const StrengthParameters strength = strength_parameters(4000.0, plain_with_shift);
  CHECK(strength.ultimate_psi == doctest::Approx(4000.0 * 10.8 / 9.8));
  CHECK(strength_psi(5.2 + 24.0 / 0.35, strength) == doctest::Approx(0.5 * strength.ultimate_psi));
}

TEST_CASE("tension and modulus follow strength") {
  CHECK(tensile_strength_psi(1000.0) == doctest::Approx(0.584 * std::pow(1000.0, 0.79)));
  CHECK(elastic_modulus_psi(900.0) == doctest::Approx(57000.0 * 30.0));
  CHECK(tensile_strength_psi(0.0) == 0.0);
  CHECK(elastic_modulus_psi(0.0) == 0.0);
}
