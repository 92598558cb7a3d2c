#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// Penetration resistance at initial and final set. Source: ASTM C403/C403M. Status: published.
inline constexpr double initial_set_psi = 500.0;
inline constexpr double final_set_psi = 4000.0;
/// Where `resistance_psi` stops growing: far past final set and past the range of a penetrometer's
/// smallest needle, where the power law means nothing. Status: ours.
inline constexpr double largest_resistance_psi = 20000.0;

/// How fast set age grows, in hours per hour: 1 at 22.8 °C (73 °F).
///
/// Idealises: one activation energy for all of setting, from batching on.
/// Range: about 5 to 40 °C. Symbols: dt_e/dt = exp[(E/R)(1/T_ref - 1/T)], T in K.
/// Source: Freiesleben Hansen & Pedersen 1977, Maturity computer for controlled curing and
/// hardening of concrete, as in ASTM C1074. Status: form published.
double set_rate(double concrete_c, double activation_energy_j_mol);

/// The set age at which `psi` is reached: the inverse of `resistance_psi`.
/// Error: std::invalid_argument unless 0 < psi <= largest_resistance_psi.
double set_age_at_resistance_h(double psi, const SettingParameters& setting);

/// Set ages, from batching, at initial and at final set, including the admixture shift.
double initial_set_age_h(const SettingParameters& setting);
double final_set_age_h(const SettingParameters& setting);

}  // namespace slabtide
