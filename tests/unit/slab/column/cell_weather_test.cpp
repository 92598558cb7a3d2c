#include "slab/column/cell_weather.h"

#include <doctest/doctest.h>

#include "slab/process/evaporation.h"
#include "support/scalar_formulas.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::test;
using namespace slabtide::fixtures;

TEST_CASE("covers add while they lie, and one that stops evaporation stops it") {
  ColumnCase column;
  column.covers = {{100.0, 200.0, 0.3, false}, {150.0, 300.0, 0.2, true}};
  CHECK(cover_at(column, 99.0) == CoverState{0.0, false});
  CHECK(cover_at(column, 100.0) == CoverState{0.3, false});
  CHECK(cover_at(column, 160.0) == CoverState{0.5, true});
  CHECK(cover_at(column, 200.0) == CoverState{0.2, true});
  CHECK(cover_at(column, 300.0) == CoverState{0.0, false});
}

TEST_CASE("a formed face always has its form") {
  ColumnCase column;
  column.formed_face = true;
  CHECK(cover_at(column, 0.0) == CoverState{form_resistance_m2k_w, true});
}

TEST_CASE("weather is taken straight between the grid's instants and held past its ends") {
  SiteWeather weather = steady_weather({.hours = 1.0});
  weather.air_c[0] = 10.0;
  weather.air_c[1] = 20.0;
  weather.air_c.back() = 50.0;
  CellExposure shade = in_the_shade(weather, 1.0);
  shade.shortwave_w_m2[1] = 100.0;
  ColumnCase column;
  column.exposure = &shade;
  column.absorptance = 0.5;
  CHECK(conditions_at(column, weather, 75.0, 1.0).air_c == doctest::Approx(12.5));
  const double longwave = absorbed_longwave_w_m2(12.5, 1.0, 1.0);
  CHECK(conditions_at(column, weather, 75.0, 1.0).absorbed_w_m2 ==
        doctest::Approx(longwave + 0.5 * 25.0));
  CHECK(conditions_at(column, weather, 1.0e9, 1.0).air_c == doctest::Approx(50.0));
  CHECK(conditions_at(column, weather, -5.0, 1.0).air_c == doctest::Approx(10.0));
}

TEST_CASE("factors and wetness reach the surface balance") {
  const SiteWeather weather = steady_weather({.wind_slab_m_s = 2.0, .hours = 1.0});
  const CellExposure shade = in_the_shade(weather, 1.0);
  ColumnCase column;
  column.exposure = &shade;
  column.convection_factor = 1.4;
  column.evaporation_factor = 0.6;
  const SurfaceConditions conditions = conditions_at(column, weather, 0.0, 0.5);
  CHECK(conditions.convection_factor == 1.4);
  CHECK(conditions.forced_w_m2k == doctest::Approx(forced_convection_w_m2k(2.0)));
  CHECK(conditions.evaporation_kg_m2_h_pa ==
        doctest::Approx(0.3 * menzel_coefficient_kg_m2_h_pa(2.0)));
}

TEST_CASE("a surface takes up less sun as it dries, a form's outside as much") {
  const SiteWeather weather = steady_weather({.hours = 1.0});
  CellExposure bright = in_the_shade(weather, 1.0);
  bright.shortwave_w_m2.assign(weather.grid.count, 100.0);
  ColumnCase column;
  column.exposure = &bright;
  column.absorptance = 0.72;
  const double longwave = absorbed_longwave_w_m2(20.0, 1.0, 1.0);
  const auto sun = [&](double wetness) {
    return conditions_at(column, weather, 0.0, wetness).absorbed_w_m2 - longwave;
  };
  CHECK(sun(1.0) == doctest::Approx(72.0));
  CHECK(sun(0.55) == doctest::Approx(60.5));
  CHECK(sun(0.1) == doctest::Approx(49.0));
  CHECK(sun(0.05) == doctest::Approx(49.0));
  column.formed_face = true;
  CHECK(sun(0.1) == doctest::Approx(72.0));
}
