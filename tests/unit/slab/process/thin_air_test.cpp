#include "slab/process/thin_air.h"

#include <cmath>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "slab/column/cell_weather.h"
#include "slab/column/column_solver.h"
#include "slab/process/evaporation.h"
#include "slabtide/weather/air/moist_air.h"
#include "support/scalar_formulas.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::test;
using namespace slabtide::fixtures;

TEST_CASE("at sea level nothing changes, to the bit") {
  const ThinAir air = thin_air(sea_level_pressure_pa);
  CHECK(air.natural_convection == 1.0);
  CHECK(air.forced_over_natural == 1.0);
  CHECK(air.still_evaporation == 1.0);
}

TEST_CASE("the Lewis relation holds between heat and vapour") {
  // h_m ~ h_c / p: for the natural parts, to the power that the factors have.
  const double fraction = 0.8345;
  const ThinAir air = thin_air(fraction * sea_level_pressure_pa);
  CHECK(air.still_evaporation == doctest::Approx(air.natural_convection / fraction));
  CHECK(air.natural_convection * air.forced_over_natural ==
        doctest::Approx(std::pow(fraction, 0.89)));
}

TEST_CASE("a pressure that is none is refused") {
  for (const double pa : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                          std::numeric_limits<double>::infinity()}) {
    CHECK_THROWS_AS(thin_air(pa), std::invalid_argument);
  }
}

TEST_CASE("the pressure reaches convection and evaporation") {
  SiteWeather weather = steady_weather({.wind_slab_m_s = 2.0, .hours = 1.0});
  weather.air_pressure_pa = air_pressure_pa(1500.0);
  const CellExposure shade = in_the_shade(weather, 1.0);
  ColumnCase column;
  column.exposure = &shade;
  const SurfaceConditions high = conditions_at(column, weather, 0.0, 1.0);
  const double fraction = weather.air_pressure_pa / sea_level_pressure_pa;
  const double h = high.convection_factor * doe2_convection(6.0, high.forced_w_m2k).h_w_m2k;
  const double natural = std::pow(fraction, 2.0 / 3.0) * doe2_convection(6.0, 0.0).h_w_m2k;
  const double forced = std::pow(fraction, 0.89) * forced_convection_w_m2k(2.0);
  CHECK(h == doctest::Approx(natural + 1.52 * (std::hypot(natural, forced) - natural)));
  const double still = menzel_coefficient_kg_m2_h_pa(0.0);
  const double windy = menzel_coefficient_kg_m2_h_pa(2.0) - still;
  CHECK(high.evaporation_kg_m2_h_pa == doctest::Approx(still / std::cbrt(fraction) + windy));
}
