#pragma once

namespace slabtide {

/// Effects of thinner air at the surface, as factors on the sea-level values.
struct ThinAir {
  double natural_convection = 1.0;
  /// The factor on the wind's part over that on the natural part: convection is homogeneous in the
  /// two.
  double forced_over_natural = 1.0;
  /// On the part of evaporation that needs no wind.
  double still_evaporation = 1.0;
};

/// The factors at a given air pressure.
///
/// Idealises: similarity only. At a given temperature the conductivity and viscosity of air do not
/// depend on its pressure p, but its density does (as p), and so does the diffusivity of vapour (as
/// 1/p). From Nu ~ Re^m and Nu ~ Gr^(1/3), with r = p / 101325 Pa: forced convection r^0.89 (the
/// exponent of the wind in convection-inl.h), natural r^(2/3). Evaporation is proportional to h_m =
/// h_c / (rho c_p Le^(2/3)), hence to h_c / r: the part that grows with the wind (linear in
/// evaporation.h, m = 1) does not change; the windless part gets r^(-1/3).
/// Source: similarity of heat and mass transfer as in any textbook; Lewis relation, ASHRAE
/// Fundamentals, mass transfer. Status: from memory; applying it to Menzel's rate, which was
/// measured near sea level, is ours. At 1500 m evaporation in still air is 6 % faster and
/// convection 11 to 14 % weaker: less than published forms of either differ.
/// Error: std::invalid_argument for a pressure that is not positive and finite.
ThinAir thin_air(double air_pressure_pa);

}  // namespace slabtide
