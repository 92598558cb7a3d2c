#include "slab/process/hydration.h"

#include <doctest/doctest.h>

#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

TEST_CASE("the degree of hydration rises from nothing to its ultimate") {
  const HydrationParameters h = hydration_parameters(Mix{});
  CHECK(hydration_degree(0.0, h) == 0.0);
  CHECK(hydration_degree(h.tau_h, h) == doctest::Approx(h.alpha_u * 0.36787944));
  CHECK(hydration_degree(1.0e7, h) == doctest::Approx(h.alpha_u).epsilon(1e-3));
}

TEST_CASE("the heat rate is the slope of the degree of hydration times its heat") {
  const HydrationParameters h = hydration_parameters(Mix{});
  for (const double age_h : {2.0, 8.0, 20.0, 60.0}) {
    constexpr double dh = 1.0e-4;
    const double slope_per_h =
        (hydration_degree(age_h + dh, h) - hydration_degree(age_h - dh, h)) / (2.0 * dh);
    const double expected = slope_per_h / 3600.0 * 485.72e3 * 307.0;  // H_u J/kg, C_c kg/m3
    CHECK(heat_rate_w_m3(age_h, 21.1, h) == doctest::Approx(expected).epsilon(1e-4));
  }
}

TEST_CASE("12.5 kJ/kg are out at initial set, and what is held back comes later") {
  for (const double initial_h : {3.0, 4.25, 8.0}) {
    const HydrationParameters free = hydration_parameters(Mix{});
    HydrationParameters h = free;
    hold_early_heat(h, initial_h);
    const auto heat = [&](double age_h) {
      return h.ultimate_heat_j_g * hydration_degree(age_h, h);
    };
    // NT BUILD 476; the age is that of 23 °C in hours at 21.1 °C.
    const double set_h = initial_h * hydration_rate(22.78, h.activation_energy_j_mol);
    CHECK(heat(set_h) == doctest::Approx(12.5).epsilon(1e-3));
    const double held = h.held_back;
    CHECK(hydration_degree(2.0 * set_h, h) ==
          doctest::Approx(16.0 / (16.0 + held) * hydration_degree(2.0 * set_h, free)));
    CHECK(hydration_degree(8.0 * set_h, h) > 0.995 * hydration_degree(8.0 * set_h, free));
  }
}

TEST_CASE("the heat rate is the slope where heat is held back, too") {
  HydrationParameters h = hydration_parameters(Mix{});
  hold_early_heat(h, 4.25);
  h.shift_h = 1.0;
  for (const double age_h : {3.0, 6.0, 9.0, 30.0}) {
    constexpr double dh = 1.0e-4;
    const double slope_per_h =
        (hydration_degree(age_h + dh, h) - hydration_degree(age_h - dh, h)) / (2.0 * dh);
    const double expected = slope_per_h / 3600.0 * 485.72e3 * 307.0;
    CHECK(heat_rate_w_m3(age_h, 21.1, h) == doctest::Approx(expected).epsilon(1e-4));
  }
}

TEST_CASE("heat comes faster when warm") {
  const HydrationParameters h = hydration_parameters(Mix{});
  CHECK(hydration_rate(21.1, h.activation_energy_j_mol) == doctest::Approx(1.0));
  CHECK(heat_rate_w_m3(8.0, 31.1, h) > 1.5 * heat_rate_w_m3(8.0, 21.1, h));
}

TEST_CASE("an admixture's shift delays the heat") {
  HydrationParameters h = hydration_parameters(Mix{});
  const double degree = hydration_degree(8.0, h);
  h.shift_h = 2.0;
  CHECK(hydration_degree(10.0, h) == doctest::Approx(degree));
  CHECK(hydration_degree(1.9, h) == 0.0);
  CHECK(heat_rate_w_m3(1.9, 20.0, h) == 0.0);
}

TEST_CASE("type III cement gives its heat sooner") {
  Mix fast;
  fast.cement = CementType::type_iii;
  CHECK(hydration_degree(8.0, hydration_parameters(fast)) >
        1.2 * hydration_degree(8.0, hydration_parameters(Mix{})));
}

TEST_CASE("class C ash brings more heat than class F") {
  Mix ash;
  ash.ash_fraction = 0.2;
  const double f = hydration_parameters(ash).ultimate_heat_j_g;
  ash.ash_class = AshClass::c;
  CHECK(hydration_parameters(ash).ultimate_heat_j_g > f);
}
