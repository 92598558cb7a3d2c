#include <cmath>

#include <doctest/doctest.h>

#include "properties/slab/random_pour.h"
#include "slab/process/setting.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;
using namespace slabtide::fixtures;

namespace {

SettingParameters random_setting() {
  SettingParameters setting;
  setting.initial_set_h = uniform(2.0, 9.0);
  setting.final_set_h = setting.initial_set_h * uniform(1.1, 1.8);
  setting.shift_h = uniform(-0.6 * setting.initial_set_h, 4.0);
  setting.activation_energy_j_mol = uniform(27e3, 45e3);
  return setting;
}

}  // namespace

TEST_CASE("resistance and set age are inverse to each other") {
  CHECK(rc::check([] {
    const SettingParameters setting = random_setting();
    const double psi = std::pow(10.0, uniform(0.0, 4.3));
    const double age_h = set_age_at_resistance_h(psi, setting);
    RC_ASSERT(std::abs(resistance_psi(age_h, setting) / psi - 1.0) < 1.0e-9);
  }));
}

TEST_CASE("resistance rises with set age and falls with a later shift") {
  CHECK(rc::check([] {
    SettingParameters setting = random_setting();
    const double age_h = uniform(0.0, 20.0);
    const double psi = resistance_psi(age_h, setting);
    RC_ASSERT(resistance_psi(age_h + uniform(0.0, 5.0), setting) >= psi);
    setting.shift_h += uniform(0.0, 3.0);
    RC_ASSERT(resistance_psi(age_h, setting) <= psi);
  }));
}

TEST_CASE("setting speeds up with temperature and with the energy on the warm side") {
  CHECK(rc::check([] {
    const double c = uniform(0.0, 50.0);
    const double energy = uniform(27e3, 45e3);
    RC_ASSERT(set_rate(c + uniform(0.0, 10.0), energy) >= set_rate(c, energy));
    const double more = energy + uniform(0.0, 5e3);
    RC_ASSERT((set_rate(c, more) >= set_rate(c, energy)) == (c >= 22.78 || more == energy));
  }));
}
