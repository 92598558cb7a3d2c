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

/// How fast equivalent age grows, hours an hour: 1 at 21.1 °C.
double hydration_rate(double concrete_c, double activation_energy_j_mol);

/// Degree of hydration, 0 to alpha_u, at an equivalent age (hours at 21.1 °C from batching):
/// alpha = alpha_u exp(-(tau/(t_e - d))^beta); 0 until the shift d has passed.
double hydration_degree(double equivalent_age_h, const HydrationParameters& hydration);

/// Heat released by a unit of degree of hydration, J/m3.
double heat_capacity_of_hydration_j_m3(const HydrationParameters& hydration);

/// Rate of heat release, W/m3:
/// Q = H_u C_c (tau/t_e)^beta (beta/t_e) alpha exp[(E/R)(1/T_r - 1/T)].
double heat_rate_w_m3(double equivalent_age_h, double concrete_c,
                      const HydrationParameters& hydration);

}  // namespace slabtide
