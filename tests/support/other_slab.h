#pragma once

#include <optional>
#include <vector>

#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/exposure.h"
#include "slabtide/weather/site/site_weather.h"

// A slab by other laws than the program's, for truths that a plan does not share: explicit steps
// over even cells, convection and drying by one film (Lewis), bleeding at an even rate that falls
// off in the end, resistance
// that starts to rise after a dead time, strength as an exponential of age, heat as a fraction of
// age, a sky and a wet surface of other formulas, stress that relaxes alike at any age. Made of
// usual forms (sources beside each); no measured slab stands behind it.

namespace slabtide::test {

/// What an invented slab is like. Ages are hours at 22.8 °C from batching.
struct OtherSlab {
  double batched_s = 0.0;
  double placed_s = 0.0;
  double concrete_c = 20.0;
  double base_top_c = 15.0;  ///< falls off to `ground_c` as a day's wave does
  double ground_c = 12.0;
  double thickness_m = 0.1;
  ThermalMaterial concrete;
  std::vector<Layer> below;
  double drying_factor = 1.0;
  double wet_absorptance = 0.72;
  double dry_absorptance = 0.5;
  double bleed_kg_m2 = 1.0;
  double first_bleed_kg_m2_h = 0.9;
  double evenly_fraction = 0.4;  ///< of the time that it bleeds, before the rate falls off
  double initial_set_h = 4.25;
  double final_set_h = 5.5;
  double dead_h = 0.0;  ///< before resistance rises; may be below 0
  double energy_j_mol = 33500.0;
  bool steeper_in_cold = false;
  double heat_j_m3 = 1.0e8;  ///< in the end
  double half_heat_h = 16.0;
  double strength_28_d_psi = 5200.0;
  double one_day_fraction = 0.25;
  double final_set_psi = 100.0;  ///< strength at final set
};

ColumnHistory other_history(const OtherSlab& slab, const SiteWeather& weather,
                            const CellExposure& exposure);

/// How stress comes and goes in an invented slab.
struct OtherStress {
  double length_m = 4.0;
  double expansion_per_k = 9.9e-6;
  double from_set_age_h = 6.0;  ///< free of stress until then
  double friction = 1.5;
  double modulus_factor = 1.0;
  double lasting = 0.55;  ///< of a stress; the rest fades in six hours
};

/// When stress is half the tensile strength.
std::optional<double> other_half_strength_s(const ColumnHistory& history,
                                            const OtherStress& stress);

}  // namespace slabtide::test
