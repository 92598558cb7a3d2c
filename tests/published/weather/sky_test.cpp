#include "slabtide/weather/sky.h"

#include <cmath>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"

using namespace slabtide;

TEST_CASE("clear-sky emissivity by Clark & Allen") {
  // EnergyPlus engineering reference (Walton 1983; Clark & Allen 1978): air 293 K, dew point
  // 283 K, clear: 0.815. Published, to 0.001; seen 0.0005.
  const double off = sky_emissivity(celsius_from_kelvin(283.0), 0.0) - 0.815;
  MESSAGE("clear-sky emissivity: off by ", off);
  CHECK(std::abs(off) <= 0.0006);
}

TEST_CASE("clouds raise the emissivity by Walton's cubic") {
  // 1 + 0.0224 n - 0.0035 n² + 0.00028 n³: at n = 5, 1.0595; at n = 10, 1.154. Published
  // polynomial, evaluated by hand.
  const double clear = sky_emissivity(0.0, 0.0);
  CHECK(sky_emissivity(0.0, 0.5) / clear == doctest::Approx(1.0595).epsilon(1e-9));
  CHECK(sky_emissivity(0.0, 1.0) / clear == doctest::Approx(1.154).epsilon(1e-9));
}
