#include "weather/sky/sky.h"

#include <doctest/doctest.h>

#include "published/published_row.h"

#include "slabtide/core/units.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_sky {

TEST_CASE("clear-sky emissivity by Clark & Allen") {
  check_row({.what = "emissivity of a clear sky",
             .source = "Clark & Allen 1978 in EnergyPlus engineering reference",
             .tolerance = 0.0005},
            "dew point 283 K", 0.815, sky_emissivity(283.0 - kelvin_from_celsius(0.0), 0.0));
}

TEST_CASE("clouds raise the emissivity by Walton's cubic") {
  // 1 + 0.0224 n - 0.0035 n² + 0.00028 n³, n in tenths of the sky.
  constexpr Published clouds{.what = "emissivity under clouds over that of a clear sky",
                             .source = "Walton 1983, evaluated by hand",
                             .tolerance = 1.0e-7,
                             .because = "exact by hand"};
  const double clear = sky_emissivity(0.0, 0.0);
  check_row(clouds, "half the sky", 1.0595, sky_emissivity(0.0, 0.5) / clear);
  check_row(clouds, "overcast", 1.154, sky_emissivity(0.0, 1.0) / clear);
}

}  // namespace published_sky
