#include "slab/mix/mix_temperature.h"

#include <stdexcept>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"

using namespace slabtide;

TEST_CASE("all at one temperature mixes to it") {
  const BatchHeat batch{.cement_kg = 300,
                        .cement_c = 20,
                        .aggregate_kg = 1800,
                        .aggregate_c = 20,
                        .water_kg = 100,
                        .water_c = 20,
                        .moisture_kg = 40,
                        .ice_kg = 0};
  CHECK(mix_temperature_c(batch) == doctest::Approx(20.0));
}

TEST_CASE("ice cools by its melting: 112 °F-lb below zero a pound") {
  // 20 lb of ice for 20 lb of water at 70 °F, solids 0.22 x 3800 lb and 80 lb of water at 70 °F:
  // (70 x 916 - 112 x 20)/936 °F.
  const BatchHeat batch{.cement_kg = 500 * kg_per_lb,
                        .cement_c = celsius_from_fahrenheit(70),
                        .aggregate_kg = 3300 * kg_per_lb,
                        .aggregate_c = celsius_from_fahrenheit(70),
                        .water_kg = 60 * kg_per_lb,
                        .water_c = celsius_from_fahrenheit(70),
                        .moisture_kg = 20 * kg_per_lb,
                        .ice_kg = 20 * kg_per_lb};
  CHECK(fahrenheit_from_celsius(mix_temperature_c(batch)) ==
        doctest::Approx((70.0 * 916.0 - 112.0 * 20.0) / 936.0));
}

TEST_CASE("ingredients: water, moisture and ice share the mix water") {
  const IngredientTemperatures ingredients{.cement_c = 40,
                                           .aggregate_c = 25,
                                           .water_c = 10,
                                           .aggregate_kg_m3 = 1800,
                                           .aggregate_moisture_kg_m3 = 50,
                                           .ice_kg_m3 = 20};
  const BatchHeat batch{.cement_kg = 300,
                        .cement_c = 40,
                        .aggregate_kg = 1800,
                        .aggregate_c = 25,
                        .water_kg = 150 - 70,
                        .water_c = 10,
                        .moisture_kg = 50,
                        .ice_kg = 20};
  CHECK(mix_temperature_c(ingredients, 300.0, 0.5) == doctest::Approx(mix_temperature_c(batch)));
}

TEST_CASE("nothing, or more ice than water, does not mix") {
  CHECK_THROWS_AS(mix_temperature_c(BatchHeat{}), std::invalid_argument);
  IngredientTemperatures ingredients;
  ingredients.ice_kg_m3 = 200.0;
  CHECK_THROWS_AS(mix_temperature_c(ingredients, 300.0, 0.5), std::invalid_argument);
}

TEST_CASE("ice or colder water makes a mix cooler by what the balance says") {
  Mix mix;
  mix.cementitious_kg_m3 = 335.0;
  mix.w_cm = 0.45;
  mix.temperature = 30.0;
  const double water_kg = mix.cementitious_kg_m3 * mix.w_cm;
  const WaterForTemperature needs = water_for(mix, 30.0, -3.0);
  BatchHeat batch{.cement_kg = 335.0,
                  .cement_c = 30.0,
                  .aggregate_kg = 1780.0,
                  .aggregate_c = 30.0,
                  .water_kg = water_kg - needs.ice_kg_m3,
                  .water_c = 30.0,
                  .moisture_kg = 0.0,
                  .ice_kg = needs.ice_kg_m3};
  CHECK(mix_temperature_c(batch) == doctest::Approx(27.0));
  batch.water_kg = water_kg;
  batch.ice_kg = 0.0;
  batch.water_c = 30.0 + needs.water_k;
  CHECK(mix_temperature_c(batch) == doctest::Approx(27.0));
  CHECK(water_for(mix, 12.0, 5.0).ice_kg_m3 == 0.0);
  CHECK(discharge_temperature_c(mix) == 30.0);
}
