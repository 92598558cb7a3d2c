#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// Parameters of the strength gain that meets `specified_psi` at 28 days of 22.8 °C (73 °F).
///
/// Idealises: hyperbolic gain on the set-age scale from t_0 on.
/// Symbols: S = S_inf k(t_e - t_0)/(1 + k(t_e - t_0)), k 0.35 a day, t_0 the set age at final
/// set less 1.3 h, S_inf = f'c (1 + 28k)/(28k).
/// Source: form of ASTM C1074; the figures are ours, set so that final set finds 80 to 100 psi
/// (notes on ASTM C403, published) and a day about a quarter of f'c.
StrengthParameters strength_parameters(double specified_psi, const SettingParameters& setting);

/// Tensile strength: 0.584 S^0.79 psi. Source: Oluokun, Burdette & Deatherage 1991, Splitting
/// tensile strength and compressive strength relationship at early ages, ACI Materials
/// Journal 88. Status: exponent published, coefficient from memory.
double tensile_strength_psi(double strength_psi);

/// Modulus of elasticity: 57000 sqrt(S) psi. Source: ACI 318. Status: published; stretched
/// here to strengths of hours.
double elastic_modulus_psi(double strength_psi);

}  // namespace slabtide
