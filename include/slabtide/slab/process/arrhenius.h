#pragma once

namespace slabtide {

/// How many times faster a process of the given activation energy runs than at `reference_k`.
///
/// Idealises: one activation energy over the whole range. Symbols: exp[(E/R)(1/T_ref - 1/T)].
/// Source: Arrhenius; for concrete ASTM C1074, annex on equivalent age. Status: published.
double arrhenius_factor(double concrete_c, double reference_k, double activation_energy_j_mol);

}  // namespace slabtide
