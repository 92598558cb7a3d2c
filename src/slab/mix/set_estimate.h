#pragma once

#include "slabtide/job/model/mix.h"

namespace slabtide {

/// ASTM C403 set times at 22.8 °C (73 °F) without admixture, hours from batching.
struct SetTimes {
  double initial_h = 0.0;
  double final_h = 0.0;
};

/// Set times estimated from the mix, for use when the supplier gives none.
///
/// Idealises: the effects of water, ash, slag and cement type add up; the cement's own chemistry is
/// left out (published pastes differ by half an hour and more either way).
/// Range: w/cm 0.35 to 0.70; lower w/cm counts as 0.35.
/// Sources: plain mix and ash rows Gebler & Klieger 1986 (PCA RD089) as tabulated in Design and
/// Control of Concrete Mixtures, from memory; w/cm slope ours, from the set criterion alpha = 0.15
/// and 0.26 w/cm of Schindler 2004 (from memory); type III common practice. Slag: 0:45 later at
/// 37.5 % slag, proportional to its fraction (half to one hour at 35 to 40 %, ACI 233R, from
/// memory); in the cold the activation energy adds to that. Departure: silica fume is assumed not
/// to affect setting (ours).
SetTimes estimated_set_times(const Mix& mix);

/// Activation energy of setting, J/mol: 33.5e3 (1 + 0.40 s), s the slag fraction. Slag makes
/// setting more sensitive to cold.
///
/// Source: Freiesleben Hansen & Pedersen 1977, Maturity computer for controlled curing and
/// hardening of concrete, above 20 °C (from memory); the slag term is ours, after the slag rows of
/// the hydration model. Departure: below 20 °C they let the energy grow by 1.47 kJ/mol per °C,
/// which holds for strength; setting would then take 4.2 times as long at 40 °F as at 70 °F, where
/// trade tables give 2.33 and this energy 2.3. Range: 5 to 40 °C.
double setting_activation_energy_j_mol(double slag_fraction);

}  // namespace slabtide
