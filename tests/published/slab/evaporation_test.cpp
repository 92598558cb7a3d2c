#include "slab/process/evaporation.h"

#include <array>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "slabtide/core/units.h"
#include "slabtide/weather/air/moist_air.h"
#include "support/scalar_formulas.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_evaporation {

namespace {

struct Row {
  double concrete_f;
  double air_f;
  double humidity_percent;
  double wind_mph;
  double rate_lb_ft2_h;
};

constexpr Published drying_table{
    .what = "evaporation by Menzel's equation",
    .source = "Portland Cement Association table of drying tendency, after Menzel 1954",
    .status = "from memory",
    .tolerance = 0.0005,
    .unit = "lb/ft2/h"};

constexpr auto rows =
    std::to_array<Row>({{70, 70, 70, 0, 0.015},   {70, 70, 70, 5, 0.038},  {70, 70, 70, 10, 0.062},
                        {70, 70, 70, 15, 0.085},  {70, 70, 70, 20, 0.110}, {70, 70, 90, 10, 0.020},
                        {70, 70, 50, 10, 0.100},  {70, 70, 30, 10, 0.135}, {50, 50, 70, 10, 0.026},
                        {80, 80, 70, 10, 0.077},  {90, 90, 70, 10, 0.110}, {70, 80, 70, 10, 0.000},
                        {70, 50, 70, 10, 0.125},  {70, 30, 70, 10, 0.165}, {80, 40, 100, 10, 0.205},
                        {60, 40, 100, 10, 0.075}, {70, 40, 50, 0, 0.035},  {70, 40, 50, 25, 0.357},
                        {80, 70, 50, 10, 0.175},  {60, 70, 50, 10, 0.045}, {90, 90, 10, 0, 0.070},
                        {90, 90, 10, 25, 0.740}});

double saturation_pa(double f) { return saturation_pressure_pa(celsius_from_fahrenheit(f)); }

std::string describe(const Row& row) {
  return fmt::format("concrete {} °F, air {} °F, {} %, {} mph", row.concrete_f, row.air_f,
                     row.humidity_percent, row.wind_mph);
}

}  // namespace

TEST_CASE("Menzel's equation in its published form beside the table of drying tendency") {
  for (const Row& row : rows) {
    const double rate = menzel_evaporation_lb_ft2_h(
        psi_from_pa(saturation_pa(row.concrete_f)),
        row.humidity_percent / 100.0 * psi_from_pa(saturation_pa(row.air_f)), row.wind_mph);
    check_row(drying_table, describe(row), row.rate_lb_ft2_h, rate);
  }
}

TEST_CASE("Menzel's equation in SI is the published one") {
  for (const Row& row : rows) {
    const double surface_pa = saturation_pa(row.concrete_f);
    const double air_pa = row.humidity_percent / 100.0 * saturation_pa(row.air_f);
    const double si = menzel_evaporation_kg_m2_h(surface_pa, air_pa, m_s_from_mph(row.wind_mph));
    const double us =
        menzel_evaporation_lb_ft2_h(psi_from_pa(surface_pa), psi_from_pa(air_pa), row.wind_mph);
    CHECK(lb_ft2_h_from_kg_m2_h(si) == doctest::Approx(us).epsilon(1e-9));
  }
}

// Worked by hand from the printed equations, with square roots by long division:
//   SI 25 °C both, 50 %, 10 km/h: 43^2.5 = 12124.7; 5 (1 - 0.5) 12124.7 14e-6 = 0.42436
//   SI 30 °C concrete, 10 °C air, 40 %, 20 km/h: 48^2.5 = 15962.6, 28^2.5 = 4148.5;
//      5 (15962.6 - 0.4 4148.5) 24e-6 = 1.71638
//   US 80 °F both, 50 %, 10 mph: 80^2.5 = 57243.3; 0.5 57243.3 5e-6 = 0.143108
//   US 70 °F concrete, 40 °F air, 50 %, 25 mph: 70^2.5 = 40996.3, 40^2.5 = 10119.3;
//      (40996.3 - 5059.6) 11e-6 = 0.395304
TEST_CASE("Uno's two forms give what a hand works out") {
  constexpr Published uno_si{.what = "evaporation by Uno, SI",
                             .source = "Uno 1998, ACI Materials Journal 95-M34, worked by hand",
                             .status = "published",
                             .tolerance = 5.0e-6,
                             .unit = "kg/m2/h"};
  constexpr Published uno_us{.what = "evaporation by Uno, US",
                             .source = "Uno 1998, ACI Materials Journal 95-M34, worked by hand",
                             .status = "published",
                             .tolerance = 5.0e-7,
                             .unit = "lb/ft2/h"};
  check_row(uno_si, "25 °C both", 0.42436, uno_evaporation_kg_m2_h(25, 25, 0.5, 10));
  check_row(uno_si, "30 over 10 °C", 1.71638, uno_evaporation_kg_m2_h(30, 10, 0.4, 20));
  check_row(uno_us, "80 °F both", 0.143108, uno_evaporation_lb_ft2_h(80, 80, 0.5, 10));
  check_row(uno_us, "70 over 40 °F", 0.395304, uno_evaporation_lb_ft2_h(70, 40, 0.5, 25));
}

TEST_CASE("Uno reads 8 to 24 % above the table where air is much colder than concrete") {
  // Rows with a difference of 20 °F or more, which the table gives to three figures.
  for (const Row& row : {rows[12], rows[13], rows[14], rows[17]}) {
    const double uno = uno_evaporation_lb_ft2_h(row.concrete_f, row.air_f,
                                                row.humidity_percent / 100.0, row.wind_mph);
    const double over = uno / row.rate_lb_ft2_h - 1.0;
    MESSAGE(fmt::format("{}: Uno {:+.1f} % against the table", describe(row), 100.0 * over));
    CHECK(over > 0.07);
    CHECK(over < 0.25);
  }
}

}  // namespace published_evaporation
