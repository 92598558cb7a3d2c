#include "slab/mix/set_estimate.h"

#include <doctest/doctest.h>

using namespace slabtide;

namespace {

SetTimes with_slag(double fraction) {
  Mix mix;
  mix.slag_fraction = fraction;
  return estimated_set_times(mix);
}

}  // namespace

TEST_CASE("the plain mix sets at 4:15 and 5:30") {
  CHECK(estimated_set_times(Mix{}).initial_h == doctest::Approx(4.25));
  CHECK(estimated_set_times(Mix{}).final_h == doctest::Approx(5.5));
}

TEST_CASE("a tenth of w/cm is 0.4 h and 0.8 h") {
  Mix wet;
  wet.w_cm = 0.55;
  CHECK(estimated_set_times(wet).initial_h == doctest::Approx(4.65));
  CHECK(estimated_set_times(wet).final_h == doctest::Approx(6.3));
}

TEST_CASE("w/cm under 0.35 counts as 0.35") {
  Mix low;
  low.w_cm = 0.35;
  Mix lower;
  lower.w_cm = 0.25;
  CHECK(estimated_set_times(lower).initial_h == estimated_set_times(low).initial_h);
  CHECK(estimated_set_times(lower).final_h == estimated_set_times(low).final_h);
}

TEST_CASE("ash delays by its share and class") {
  Mix half_row;
  half_row.ash_fraction = 0.125;
  CHECK(estimated_set_times(half_row).initial_h == doctest::Approx(4.25 + 0.25));
  CHECK(estimated_set_times(half_row).final_h == doctest::Approx(5.5 + 35.0 / 60.0));
  half_row.ash_class = AshClass::c;
  CHECK(estimated_set_times(half_row).initial_h == doctest::Approx(4.25 + 12.5 / 60.0));
  CHECK(estimated_set_times(half_row).final_h == doctest::Approx(5.5 + 20.0 / 60.0));
}

TEST_CASE("slag delays with its share, final set as much more as it is later") {
  CHECK(with_slag(0.0).initial_h == doctest::Approx(4.25));
  CHECK(with_slag(0.375).initial_h == doctest::Approx(4.25 + 0.75));
  CHECK(with_slag(0.375).final_h == doctest::Approx(5.5 + 0.75 * 5.5 / 4.25));
  CHECK(with_slag(0.75).initial_h == doctest::Approx(4.25 + 1.5));
}

TEST_CASE("slag makes setting more sensitive to cold") {
  CHECK(setting_activation_energy_j_mol(0.0) == doctest::Approx(33.5e3));
  CHECK(setting_activation_energy_j_mol(0.5) == doctest::Approx(40.2e3));
}

TEST_CASE("type III cement sets in three quarters of the time") {
  Mix fast;
  fast.cement = CementType::type_iii;
  CHECK(estimated_set_times(fast).initial_h == doctest::Approx(0.75 * 4.25));
  CHECK(estimated_set_times(fast).final_h == doctest::Approx(0.75 * 5.5));
}
