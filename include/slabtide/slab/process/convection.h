#pragma once

namespace slabtide {

/// Coefficient of heat transfer between a surface and the air, W/m2K.
struct Convection {
  double h_w_m2k = 0.0;
  double slope_w_m2k2 = 0.0;  ///< dh/dT of the surface, for Newton
};

/// The forced part for a rough surface's wind: 3.26 V^0.89, W/m2K.
double forced_convection_w_m2k(double wind_m_s);

/// DOE-2 convection at a horizontal surface that faces up.
///
/// Idealises: natural and forced parts combined; roughness of concrete. Published forms
/// differ by 40 % either way. Range: natural part for any |dT|, wind 0 to about 12 m/s.
/// Symbols: h = h_n + R_f (h_g - h_n), h_g = sqrt(h_n^2 + (3.26 V^0.89)^2), R_f 1.52;
/// h_n = 9.482 |dT|^(1/3) / 6.283 (surface warmer), 1.810 |dT|^(1/3) / 2.382 (cooler).
/// Source: EnergyPlus Engineering Reference, outside surface heat balance, DOE-2 model and
/// TARP natural convection at zero tilt. Status: published.
Convection doe2_convection(double surface_less_air_k, double forced_w_m2k);

}  // namespace slabtide
