#pragma once

#include "slabtide/job/model/mix.h"
#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// Parameters of the heat of hydration of a mix, without admixture shift.
///
/// Idealises: one S-curve of the degree of hydration over equivalent age for the whole
/// cementitious blend; a default cement (ours) of type I/II or III.
/// Source: Schindler & Folliard 2005, Heat of Hydration Models for Cementitious Materials,
/// ACI Materials Journal 102; Schindler 2004, Effect of Temperature on Hydration of
/// Cementitious Materials, ACI Materials Journal 101. Status: from memory.
/// Departures: silica fume counts as cement; ash CaO is a default of its class (ours).
HydrationParameters hydration_parameters(const Mix& mix);

/// The same with the ash's own CaO as a mass fraction.
HydrationParameters hydration_parameters(const Mix& mix, double ash_cao_fraction);

/// Holds the heat before setting back to 12.5 kJ/kg of cementitious material at initial set,
/// without admixture at 73 °F; where the S-curve has less, it stays.
///
/// Source: NT BUILD 476, 12.5 kJ/kg of cement at a penetration resistance of 3.5 MPa. Status:
/// published; that it holds for blends too is ours. The S-curve alone has some 40.
void hold_early_heat(HydrationParameters& hydration, double initial_set_h);

/// Heat released per unit of degree of hydration, J/m3.
double heat_capacity_of_hydration_j_m3(const HydrationParameters& hydration);

}  // namespace slabtide
