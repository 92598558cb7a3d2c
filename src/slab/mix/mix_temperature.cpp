#include "mix_temperature.h"

#include <stdexcept>

#include "slabtide/core/units.h"

namespace slabtide {
namespace {

constexpr double solids_heat_fraction = 0.22;  // of water's: TM 5-852-4
// Ice at 32 °F absorbs 144 Btu/lb to melt (in °F of water); so, counted from 0 °F, it contributes
// 32 - 144.
constexpr double ice_f = -112.0;  // 32 - 144, from memory

}  // namespace

double mix_temperature_c(const BatchHeat& batch) {
  const double solids = solids_heat_fraction * (batch.aggregate_kg + batch.cement_kg);
  const double mass = solids + batch.water_kg + batch.moisture_kg + batch.ice_kg;
  if (!(mass > 0.0)) throw std::invalid_argument("mix temperature: nothing to mix");
  const double aggregate_f = fahrenheit_from_celsius(batch.aggregate_c);
  const double heat =
      solids_heat_fraction * (aggregate_f * batch.aggregate_kg +
                              fahrenheit_from_celsius(batch.cement_c) * batch.cement_kg) +
      fahrenheit_from_celsius(batch.water_c) * batch.water_kg + aggregate_f * batch.moisture_kg +
      ice_f * batch.ice_kg;
  return celsius_from_fahrenheit(heat / mass);
}

double mix_temperature_c(const IngredientTemperatures& ingredients, double cementitious_kg_m3,
                         double w_cm) {
  const double liquid_kg =
      cementitious_kg_m3 * w_cm - ingredients.ice_kg_m3 - ingredients.aggregate_moisture_kg_m3;
  if (!(liquid_kg >= 0.0))
    throw std::invalid_argument("mix temperature: more ice and moisture than mix water");
  return mix_temperature_c({.cement_kg = cementitious_kg_m3,
                            .cement_c = ingredients.cement_c,
                            .aggregate_kg = ingredients.aggregate_kg_m3,
                            .aggregate_c = ingredients.aggregate_c,
                            .water_kg = liquid_kg,
                            .water_c = ingredients.water_c,
                            .moisture_kg = ingredients.aggregate_moisture_kg_m3,
                            .ice_kg = ingredients.ice_kg_m3});
}

WaterForTemperature water_for(const Mix& mix, double discharge_c, double by_k) {
  constexpr double usual_aggregate_kg_m3 = 1780.0;
  const auto* parts = std::get_if<IngredientTemperatures>(&mix.temperature);
  const double aggregate_kg = parts == nullptr ? usual_aggregate_kg_m3 : parts->aggregate_kg_m3;
  const double water_kg = mix.cementitious_kg_m3 * mix.w_cm;
  const double heat = solids_heat_fraction * (aggregate_kg + mix.cementitious_kg_m3) + water_kg;
  // A kilogram of ice in place of a kilogram of water takes up this much, in kelvin of water.
  const double ice_k = discharge_c - celsius_from_fahrenheit(ice_f);
  return {by_k < 0.0 ? -by_k * heat / ice_k : 0.0, by_k * heat / water_kg};
}

double discharge_temperature_c(const Mix& mix) {
  if (const auto* given = std::get_if<double>(&mix.temperature)) return *given;
  return mix_temperature_c(std::get<IngredientTemperatures>(mix.temperature),
                           mix.cementitious_kg_m3, mix.w_cm);
}

}  // namespace slabtide
