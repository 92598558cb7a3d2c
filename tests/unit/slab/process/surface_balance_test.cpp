#include <doctest/doctest.h>

#include "slab/process/evaporation.h"
#include "slabtide/weather/air/moist_air.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace {

SurfaceConditions windy_and_wet() {
  SurfaceConditions conditions;
  conditions.absorbed_w_m2 = 700.0;
  conditions.air_c = 20.0;
  conditions.vapour_pressure_pa = 1200.0;
  conditions.forced_w_m2k = 8.0;
  conditions.evaporation_kg_m2_h_pa = menzel_coefficient_kg_m2_h_pa(2.0);
  return conditions;
}

}  // namespace

TEST_CASE("a surface among walls at its own temperature and saturated air loses nothing") {
  SurfaceConditions conditions = windy_and_wet();
  conditions.vapour_pressure_pa = saturation_pressure_pa(20.0);
  conditions.absorbed_w_m2 = absorbed_longwave_w_m2(20.0, 0.8, 0.0);  // no sky in view
  CHECK(surface_exchange(conditions, 20.0).w_m2 == doctest::Approx(0.0).epsilon(1e-9));
}

TEST_CASE("a clear sky takes heat by its share of the view") {
  const double walls = absorbed_longwave_w_m2(20.0, 0.8, 0.0);
  CHECK(absorbed_longwave_w_m2(20.0, 0.8, 1.0) == doctest::Approx(0.8 * walls));
  CHECK(absorbed_longwave_w_m2(20.0, 0.8, 0.5) == doctest::Approx(0.9 * walls));
  // 0.93 x 5.670374e-8 x 293.15^4 = 389.46 W/m2 by hand.
  CHECK(walls == doctest::Approx(389.46).epsilon(1e-4));
}

TEST_CASE("each path takes its heat") {
  SurfaceConditions conditions;
  conditions.air_c = 20.0;
  const double still = surface_exchange(conditions, 30.0).w_m2;
  conditions.forced_w_m2k = 8.0;
  const double wind = surface_exchange(conditions, 30.0).w_m2;
  CHECK(wind < still);
  conditions.convection_factor = 1.4;
  CHECK(surface_exchange(conditions, 30.0).w_m2 < wind);
  CHECK(surface_exchange(conditions, 30.0).evaporation_kg_m2_h == 0.0);
}

TEST_CASE("evaporation is Menzel's at the surface, and its heat is latent") {
  const SurfaceConditions wet = windy_and_wet();
  SurfaceConditions dry = wet;
  dry.evaporation_kg_m2_h_pa = 0.0;
  const SurfaceExchange exchange = surface_exchange(wet, 28.0);
  const double rate = menzel_evaporation_kg_m2_h(saturation_pressure_pa(28.0), 1200.0, 2.0);
  CHECK(exchange.evaporation_kg_m2_h == doctest::Approx(rate));
  CHECK(surface_exchange(dry, 28.0).w_m2 - exchange.w_m2 ==
        doctest::Approx(rate / 3600.0 * latent_heat_j_kg(28.0)));
}

TEST_CASE("no dew: a surface colder than the dew point neither gains nor loses water") {
  const SurfaceExchange exchange = surface_exchange(windy_and_wet(), 5.0);
  CHECK(exchange.evaporation_kg_m2_h == 0.0);
}

TEST_CASE("the slope is the derivative to 2 percent") {
  constexpr double dt = 1.0e-4;
  for (const double c : {5.0, 15.0, 25.0, 45.0}) {
    const SurfaceConditions conditions = windy_and_wet();
    const double slope =
        (surface_exchange(conditions, c + dt).w_m2 - surface_exchange(conditions, c - dt).w_m2) /
        (2.0 * dt);
    CHECK(surface_exchange(conditions, c).slope_w_m2k == doctest::Approx(slope).epsilon(0.02));
  }
}
