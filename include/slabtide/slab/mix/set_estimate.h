#pragma once

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// ASTM C403 set times at 22.8 °C (73 °F) without admixture, hours from batching.
struct SetTimes {
  double initial_h = 0.0;
  double final_h = 0.0;
};

/// Set times estimated from the mix, for want of the supplier's.
///
/// Idealises: the effects of water, ash, slag and cement type add; the cement's own
/// chemistry is left out (published pastes differ by half an hour and more either way).
/// Range: w/cm 0.35 to 0.70; lower w/cm counts as 0.35.
/// Sources: plain mix and ash rows Gebler & Klieger 1986 (PCA RD089) as tabulated in Design
/// and Control of Concrete Mixtures, from memory; w/cm slope ours, from the set criterion
/// alpha = 0.15 and 0.26 w/cm of Schindler 2004 (from memory); slag ours; type III common
/// practice. Departure: silica fume is taken to leave setting alone (ours).
SetTimes estimated_set_times(const Mix& mix);

/// Activation energy of setting, J/mol. Slag makes setting more sensitive to cold.
/// Source: between published anchors (see the constant). Status: ours; the slag term too, after
/// the slag rows of the hydration model.
double setting_activation_energy_j_mol(double slag_fraction);

}  // namespace slabtide
