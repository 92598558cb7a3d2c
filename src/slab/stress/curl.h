#pragma once

namespace slabtide {

/// Modulus of subgrade reaction of a usual granular base, Pa/m (150 psi/in). Status: ours.
inline constexpr double usual_subgrade_pa_m = 40.7e6;

/// Radius of relative stiffness, m: l = (E h^3 / (12 (1 - nu^2) k))^(1/4), nu 0.15.
/// Idealises: an elastic plate on springs. Source: Westergaard 1926. Status: published.
double relative_stiffness_radius_m(double modulus_pa, double thickness_m, double subgrade_pa_m);

/// Curling stress at the middle of a length, as a fraction of the fully restrained stress, by
/// length over radius of relative stiffness.
/// Symbols: x = L/(l sqrt 8), C = 1 - 2 cos x cosh x (tan x + tanh x)/(sin 2x + sinh 2x).
/// Source: Bradbury 1938, Reinforced concrete pavements, after Westergaard. Status: published.
/// Error: std::invalid_argument unless the ratio is >= 0.
double curl_coefficient(double length_over_radius);
/// The maximum, 1 + 1/cosh(pi), at a length of pi root 8 radii.
inline constexpr double largest_curl_coefficient = 1.0862668;

}  // namespace slabtide
