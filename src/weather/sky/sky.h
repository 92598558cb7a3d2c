#pragma once

namespace slabtide {

/// Emissivity of the whole sky relative to a black body at air temperature, 0 to 1: the sky sends
/// down emissivity x sigma x (air K)^4.
///
/// Idealises: the sky as a grey body at the temperature of the air near the ground, fitted to
/// stations in the US plains. Range: dew points of about -20 to 25 °C.
/// Symbols: (0.787 + 0.764 ln(Tdp/273)) (1 + 0.0224 n - 0.0035 n² + 0.00028 n³), Tdp dew
/// point in kelvin, n cloud in tenths; capped at 1.
/// Source: Clark & Allen 1978; Walton 1983; as the EnergyPlus engineering reference gives
/// them. Status: published. Departure: at least 0, for air without vapour.
/// Error: std::invalid_argument for a dew point under -100 °C, one that is not a number or a
/// cloud fraction outside 0 to 1.
double sky_emissivity(double dew_point_c, double cloud_fraction);

}  // namespace slabtide
