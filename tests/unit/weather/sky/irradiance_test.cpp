#include "weather/sky/irradiance.h"

#include <cmath>
#include <initializer_list>
#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

using namespace slabtide;

namespace {
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
}

TEST_CASE("no light comes from a sun that is down") {
  CHECK(clear_sky_w_m2(0.0) == 0.0);
  CHECK(clear_sky_w_m2(-0.5) == 0.0);
  CHECK(extraterrestrial_w_m2(-0.5, 1.0) == 0.0);
}

TEST_CASE("the parts of the light add up to the whole") {
  for (const double cos_zenith : {-0.2, 0.03, 0.066, 0.5, 1.0}) {
    for (const double global : {0.0, 5.0, 400.0}) {
      const SplitIrradiance light = split_irradiance(global, cos_zenith, 1.0);
      CHECK(light.beam_horizontal_w_m2 + light.diffuse_w_m2 == doctest::Approx(global));
      CHECK(light.beam_horizontal_w_m2 >= 0.0);
      CHECK(light.diffuse_w_m2 >= 0.0);
    }
  }
}

TEST_CASE("with a low sun all light is sky light") {
  CHECK(split_irradiance(40.0, 0.064, 1.0).beam_horizontal_w_m2 == 0.0);
  CHECK(split_irradiance(40.0, 0.066, 1.0).beam_horizontal_w_m2 > 0.0);
}

TEST_CASE("a beam is never stronger than the sun outside the air") {
  // A forecast's hourly mean can be more light than a low sun gives.
  const SplitIrradiance light = split_irradiance(300.0, 0.1, 1.0);
  CHECK(light.beam_horizontal_w_m2 <= extraterrestrial_w_m2(0.1, 1.0));
  CHECK(light.beam_horizontal_w_m2 + light.diffuse_w_m2 == doctest::Approx(300.0));
}

TEST_CASE("irradiance refuses what cannot be") {
  CHECK_THROWS_AS(clear_sky_w_m2(1.1), std::invalid_argument);
  CHECK_THROWS_AS(clear_sky_w_m2(not_a_number), std::invalid_argument);
  CHECK_THROWS_AS(cloud_transmission(-0.1), std::invalid_argument);
  CHECK_THROWS_AS(cloud_transmission(not_a_number), std::invalid_argument);
  CHECK_THROWS_AS(extraterrestrial_w_m2(0.5, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(diffuse_fraction(-0.1), std::invalid_argument);
  CHECK_THROWS_AS(split_irradiance(-1.0, 0.5, 1.0), std::invalid_argument);
  CHECK_THROWS_AS(split_irradiance(not_a_number, 0.5, 1.0), std::invalid_argument);
}

TEST_CASE("thinner air above lets more of a clear sky's light through") {
  constexpr double high_pa = 84556.0;
  CHECK(clear_sky_w_m2(0.7, sea_level_pressure_pa) == clear_sky_w_m2(0.7));
  const double air_masses_less = (1.0 - high_pa / sea_level_pressure_pa) / 0.7;
  CHECK(clear_sky_w_m2(0.7, high_pa) / clear_sky_w_m2(0.7) ==
        doctest::Approx(std::exp(0.059 * air_masses_less)));
  CHECK_THROWS_AS(clear_sky_w_m2(0.7, 0.0), std::invalid_argument);
  CHECK_THROWS_AS(clear_sky_w_m2(0.7, not_a_number), std::invalid_argument);
}
