#pragma once

#include <optional>
#include <string>
#include <vector>

#include "slabtide/slab/material/layer.h"

namespace slabtide {

/// ASTM C403 setting on the set-age scale (hours at 22.8 °C, 73 °F).
struct SettingParameters {
  double initial_set_h = 0.0;  ///< without admixture
  double final_set_h = 0.0;    ///< without admixture
  double shift_h = 0.0;        ///< shift by the admixtures; negative for accelerators
  double activation_energy_j_mol = 0.0;
  bool estimated = true;  ///< false if the supplier's figures were used
};

/// Heat of hydration, Schindler & Folliard 2005.
struct HydrationParameters {
  double alpha_u = 0.0;
  double tau_h = 0.0;
  double beta = 0.0;
  double ultimate_heat_j_g = 0.0;
  double cementitious_kg_m3 = 0.0;
  double activation_energy_j_mol = 0.0;
  double shift_h = 0.0;  ///< the admixture shift delays the heat too
  /// Initial set without admixture, hours at 21.1 °C; the heat before it is held back.
  double set_age_h = 0.0;
  double held_back = 0.0;  ///< what is held back by then, over what is released; 0: nothing
};

/// Compressive strength over the set age, the form of ASTM C1074.
struct StrengthParameters {
  double ultimate_psi = 0.0;     ///< S-infinity
  double rate_per_day = 0.0;     ///< k at 22.8 °C
  double start_set_age_h = 0.0;  ///< t_0
};

/// Everything that the column needs to know of a mix with its admixtures.
struct MixModel {
  SettingParameters setting;
  HydrationParameters hydration;
  StrengthParameters strength;
  ThermalMaterial concrete;
  double bleed_kg_m2_per_mm = 0.0;  ///< total bleed water per mm of depth
  double expansion_per_k = 0.0;
  double discharge_c = 0.0;
  /// The uncertainty that remains of the set times after the mix book, as
  /// LearnedSet::log_deviation.
  std::optional<double> learned_log_deviation;
  bool hardly_bleeds = false;  ///< because of silica fume; evaporation limits are halved
  /// Where the figures come from and what was assumed, in words for the report.
  std::vector<std::string> notes;
};

}  // namespace slabtide
