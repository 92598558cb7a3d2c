#include "slab/mix/mix_temperature.h"

#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slabtide/core/units.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_mix_temperature {

TEST_CASE("hot cement, aggregate and water mix to the published temperature") {
  const double mixed_c = mix_temperature_c({.cement_kg = 470 * kg_per_lb,
                                            .cement_c = celsius_from_fahrenheit(150),
                                            .aggregate_kg = 3300 * kg_per_lb,
                                            .aggregate_c = celsius_from_fahrenheit(70),
                                            .water_kg = 260 * kg_per_lb,
                                            .water_c = celsius_from_fahrenheit(70)});
  check_row({.what = "mixed temperature",
             .source = "Concrete Construction; TM 5-852-4 formula",
             .status = "published",
             .tolerance = 0.05,
             .unit = "°F"},
            "470 lb cement at 150 °F, 3300 lb aggregate and 260 lb water at 70 °F", 77.6,
            fahrenheit_from_celsius(mixed_c));
}

}  // namespace published_mix_temperature
