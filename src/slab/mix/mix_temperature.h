#pragma once

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// Masses and temperatures of a batch's ingredients, for any one unit of volume.
struct BatchHeat {
  double cement_kg = 0.0;
  double cement_c = 0.0;
  double aggregate_kg = 0.0;
  double aggregate_c = 0.0;
  double water_kg = 0.0;  ///< added as liquid
  double water_c = 0.0;
  double moisture_kg = 0.0;  ///< free water on the aggregate, at its temperature
  double ice_kg = 0.0;
};

/// Temperature of the concrete as mixed, °C.
///
/// Idealises: no heat of wetting, no exchange with drum and air; specific heat of solids 0.22 times
/// that of water. Symbols (°F, lb): T = [0.22(Ta Wa + Tc Wc) + Tw Ww + Ta Wm - 112 Wi] /
/// [0.22(Wa + Wc) + Ww + Wm + Wi].
/// Source: US Army TM 5-852-4 without ice (published); the ice term from memory.
/// Error: std::invalid_argument if the masses do not have a positive sum.
double mix_temperature_c(const BatchHeat& batch);

/// The same for a mix described by its ingredients.
double mix_temperature_c(const IngredientTemperatures& ingredients, double cementitious_kg_m3,
                         double w_cm);

/// What moves the temperature of a mix as it is discharged by so many kelvin.
struct WaterForTemperature {
  double ice_kg_m3 = 0.0;  ///< in place of as much water, to cool it; 0 to warm it
  double water_k = 0.0;    ///< by how much the mix water must be colder or hotter instead
};

/// By the balance above, all ingredients taken at the discharge temperature; the aggregate at
/// 1780 kg/m3 where the job does not tell it, as normal-weight mixes have (from memory).
WaterForTemperature water_for(const Mix& mix, double discharge_c, double by_k);

/// The same for a mix's temperature however the job gives it: measured, or by its ingredients.
double discharge_temperature_c(const Mix& mix);

}  // namespace slabtide
