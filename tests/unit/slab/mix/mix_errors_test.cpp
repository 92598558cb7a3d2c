#include "slabtide/slab/mix/mix_errors.h"

#include <cmath>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slab/mix/mix_model.h"
#include "slab/process/setting.h"
#include "slab/process/strength.h"
#include "support/scalar_formulas.h"

namespace slabtide {
namespace {

using test::resistance_psi;
using test::strength_psi;

MixModel retarded() {
  Mix mix;
  mix.admixtures = {{AdmixtureKind::retarder, std::nullopt, std::nullopt, 1.0}};
  return mix_model(mix, mix.admixtures);
}

TEST_CASE("no errors leave the mix as it is") {
  const MixModel mix = retarded();
  const MixModel same = with_errors(mix, {});
  CHECK(same.setting.initial_set_h == mix.setting.initial_set_h);
  CHECK(same.setting.final_set_h == doctest::Approx(mix.setting.final_set_h));
  CHECK(same.strength.start_set_age_h == doctest::Approx(mix.strength.start_set_age_h));
  CHECK(same.hydration.tau_h == mix.hydration.tau_h);
}

TEST_CASE("the resistance still reaches 500 and 4000 psi at the moved set times") {
  const MixModel mix = retarded();
  const MixModel slow =
      with_errors(mix, {.set_time_factor = 1.2, .set_span_factor = 1.5, .admixture_factor = 0.5});
  const double initial_h = 1.2 * mix.setting.initial_set_h + 0.5;
  const double final_h =
      initial_h + 1.2 * 1.5 * (mix.setting.final_set_h - mix.setting.initial_set_h);
  CHECK(resistance_psi(initial_h, slow.setting) == doctest::Approx(500.0));
  CHECK(resistance_psi(final_h, slow.setting) == doctest::Approx(4000.0));
}

TEST_CASE("final set finds the same strength, however slow the mix") {
  const MixModel mix = retarded();
  const MixModel slow = with_errors(mix, {.set_time_factor = 1.3, .admixture_factor = 1.4});
  CHECK(strength_psi(final_set_age_h(slow.setting), slow.strength) ==
        doctest::Approx(strength_psi(final_set_age_h(mix.setting), mix.strength)));
}

TEST_CASE("heat goes along with the set, temperature and bleed by their own errors") {
  const MixModel mix = retarded();
  const MixModel off = with_errors(mix, {.discharge_k = 2.0,
                                         .set_time_factor = 0.9,
                                         .activation_energy_factor = 1.1,
                                         .bleed_factor = 0.7});
  CHECK(off.hydration.tau_h == doctest::Approx(0.9 * mix.hydration.tau_h));
  CHECK(off.setting.activation_energy_j_mol ==
        doctest::Approx(1.1 * mix.setting.activation_energy_j_mol));
  CHECK(off.discharge_c == doctest::Approx(mix.discharge_c + 2.0));
  CHECK(off.bleed_kg_m2_per_mm == doctest::Approx(0.7 * mix.bleed_kg_m2_per_mm));
}

TEST_CASE("strength and expansion are off by their own") {
  const MixModel mix = retarded();
  const MixModel off = with_errors(mix, {.strength_factor = 0.8, .expansion_factor = 1.2});
  const double age_h = 24.0;
  CHECK(strength_psi(age_h, off.strength) ==
        doctest::Approx(0.8 * strength_psi(age_h, mix.strength)));
  CHECK(off.expansion_per_k == doctest::Approx(1.2 * mix.expansion_per_k));
}

TEST_CASE("a factor that is not above 0 is refused") {
  CHECK_THROWS_AS(with_errors(retarded(), {.strength_factor = 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(with_errors(retarded(), {.set_time_factor = 0.0}), std::invalid_argument);
  CHECK_THROWS_AS(with_errors(retarded(), {.bleed_factor = std::nan("")}), std::invalid_argument);
}

}  // namespace
}  // namespace slabtide
