#include "slabtide/core/units.h"

#include <doctest/doctest.h>

using namespace slabtide;
using doctest::Approx;

namespace {

constexpr double exact = 1.0e-12;  // relative; only rounding was observed

Approx same(double value) { return Approx(value).epsilon(exact); }

}  // namespace

// Source of every figure here unless it says otherwise: NIST SP 811 (2008), appendix B.8,
// published; factors written there in bold are exact.

TEST_CASE("temperature") {
  CHECK(celsius_from_fahrenheit(32.0) == 0.0);
  CHECK(celsius_from_fahrenheit(212.0) == same(100.0));
  CHECK(celsius_from_fahrenheit(-40.0) == same(-40.0));
  CHECK(fahrenheit_from_celsius(20.0) == same(68.0));
  CHECK(kelvin_from_celsius(0.0) == 273.15);
}

TEST_CASE("length, area, volume") {
  CHECK(m_from_ft(1.0) == 0.3048);
  CHECK(ft_from_m(0.3048) == same(1.0));
  CHECK(m_from_in(4.0) == same(0.1016));
  CHECK(in_from_m(0.0254) == same(1.0));
  CHECK(m_from_mm(100.0) == same(0.1));
  CHECK(m2_from_ft2(1.0) == same(0.09290304));
  CHECK(ft2_from_m2(0.09290304) == same(1.0));
  CHECK(m3_from_yd3(1.0) == same(0.764554857984));  // (0.9144 m) cubed
  CHECK(m3_from_yd3(1.0) == same(0.9144 * 0.9144 * 0.9144));
  CHECK(yd3_from_m3(0.764554857984) == same(1.0));
  CHECK(mm_from_in(0.1) == same(2.54));
}

TEST_CASE("speed") {
  CHECK(m_s_from_mph(1.0) == 0.44704);
  CHECK(mph_from_m_s(0.44704) == same(1.0));
  CHECK(m_s_from_km_h(36.0) == same(10.0));
  CHECK(km_h_from_m_s(10.0) == same(36.0));
  CHECK(m_s_from_knots(1.0) == same(1852.0 / 3600.0));
}

TEST_CASE("mass, density, mass per area") {
  CHECK(lb_from_kg(0.45359237) == same(1.0));
  // 1 lb/yd3 is 0.5932764 kg/m3 (rounded there to seven digits; seen 2e-9 relative).
  CHECK(kg_m3_from_lb_yd3(1.0) == Approx(0.5932764).epsilon(1.0e-7));
  CHECK(lb_yd3_from_kg_m3(kg_m3_from_lb_yd3(564.0)) == same(564.0));
  // 1 lb/ft2 is 4.882428 kg/m2 (rounded there; seen 7e-8 relative).
  CHECK(kg_m2_h_from_lb_ft2_h(0.2) == Approx(0.9764856).epsilon(1.0e-6));
  CHECK(lb_ft2_h_from_kg_m2_h(kg_m2_h_from_lb_ft2_h(0.2)) == same(0.2));
}

TEST_CASE("pressure") {
  CHECK(pa_from_psi(1.0) == 6894.757);
  CHECK(psi_from_pa(6894.757) == same(1.0));
  CHECK(psi_from_mpa(3.5) == Approx(507.632).epsilon(1.0e-6));  // 500 psi is about 3.5 MPa
  CHECK(mpa_from_psi(4000.0) == same(27.579028));
}

TEST_CASE("admixture dose and insulation") {
  // 1 fl oz (29.57353 mL) to 100 lb (45.359237 kg): 65.198 mL to 100 kg.
  CHECK(ml_100kg_from_floz_cwt(1.0) == Approx(65.1985).epsilon(1.0e-6));
  CHECK(floz_cwt_from_ml_100kg(ml_100kg_from_floz_cwt(3.0)) == same(3.0));
  // 1 F·ft2·h/Btu is 0.1761102 m2K/W; the program uses 0.1761 (seen 6e-5 relative).
  CHECK(m2k_w_from_r_us(1.0) == Approx(0.1761102).epsilon(1.0e-4));
}
