#pragma once

namespace slabtide {

/// What thinner air changes at the surface, as factors on the figures at sea level.
struct ThinAir {
  double natural_convection = 1.0;
  /// Of the wind's part over the natural part's: convection is homogeneous in the two.
  double forced_over_natural = 1.0;
  /// On the part of evaporation that goes without wind.
  double still_evaporation = 1.0;
};

/// The factors at an air pressure.
///
/// Idealises: similarity alone. At a given temperature conductivity and viscosity of air do
/// not depend on its pressure p, density does (as p) and so does how fast vapour spreads (as
/// 1/p). From Nu ~ Re^m and Nu ~ Gr^(1/3), r = p / 101325 Pa:
/// wind's convection r^0.89 (the exponent of the wind in convection.h), natural r^(2/3).
/// Evaporation goes by h_m = h_c / (rho c_p Le^(2/3)), hence as h_c / r: the part that grows
/// with the wind (straight in evaporation.h, m = 1) does not change, the still part has
/// r^(-1/3).
/// Source: similarity of heat and mass transfer as in any textbook; Lewis relation, ASHRAE
/// Fundamentals, mass transfer. Status: from memory; that Menzel's rate, measured low down,
/// is carried to other pressures this way is ours. At 1500 m evaporation in still air is 6 %
/// faster, convection 11 to 14 % weaker: less than the forms of either differ by.
/// Error: std::invalid_argument for a pressure that is not positive and finite.
ThinAir thin_air(double air_pressure_pa);

}  // namespace slabtide
