#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// How far a mix's mean strength exceeds the specified f'c, psi, if nothing better is known.
///
/// Symbols: 1000 psi for f'c under 3000 psi, 1200 to 5000, 0.10 f'c + 700 above.
/// Source: ACI 301, required average strength without test records (1200 psi at 3000 to 5000
/// published; the other two from memory). For comparison: 958 cylinders 7 to 21 % above what their
/// plants had to reach, which itself is above f'c, and f'c reached before 7 days (Antunes 2022,
/// CivilEng 3, published); f'cr = f'c + 1.34 s or f'c + 2.33 s - 500 psi (ACI 318, published);
/// field mixes up to 700 psi below the laboratory's (The Concrete Producer, 84 projects,
/// published).
double usual_strength_margin_psi(double specified_psi);

/// Parameters of the strength gain that reaches `mean_psi` at 28 days of 22.8 °C (73 °F); the mean
/// is f'c plus the margin.
///
/// Idealises: hyperbolic gain on the set-age scale from t_0 on; water, cement and age as in the
/// cylinders. Range: plain and blended mixes, hours to 28 days, 5 to 40 °C.
/// Symbols: S = S_inf k(t_e - t_0)/(1 + k(t_e - t_0)), k 0.35 per day, t_0 the set age at final set
/// minus 1.3 h, S_inf = f_m (1 + 28k)/(28k), f_m the mean.
/// Source: form of ASTM C1074; the figures are ours, chosen to give about 100 psi at final set
/// (notes on ASTM C403, published) and a quarter of the mean after a day.
StrengthParameters strength_parameters(double mean_psi, const SettingParameters& setting);

/// Tensile strength: 0.584 S^0.79 psi. Source: Oluokun, Burdette & Deatherage 1991, Splitting
/// tensile strength and compressive strength relationship at early ages, ACI Materials
/// Journal 88. Status: exponent published, coefficient from memory.
double tensile_strength_psi(double strength_psi);

/// Modulus of elasticity: 57000 sqrt(S) psi. Source: ACI 318. Status: published; extrapolated here
/// to the strengths of the first hours.
double elastic_modulus_psi(double strength_psi);

}  // namespace slabtide
