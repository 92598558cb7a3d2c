#pragma once

namespace slabtide {

/// Pressure of saturated water vapour over a plane surface of liquid water, Pa.
///
/// Idealises: pure water, no enhancement by the air. Published range 0 to 200 °C; below 0 °C it is
/// extended over supercooled water, never over ice, because dew points and wet concrete are given
/// over water.
/// Symbols: K, temperature in kelvin; p, Pa.
/// Source: Hyland & Wexler 1983, as ASHRAE Fundamentals gives it for liquid water. Status:
/// published. Departure: the extension below 0 °C.
/// Error: std::invalid_argument outside -100 to 200 °C.
double saturation_pressure_pa(double air_c);

/// Pressure of the vapour in air of the given dew point: saturation at the dew point. Pa.
/// Error: as saturation_pressure_pa.
double vapour_pressure_pa(double dew_point_c);

/// Dew point of air at a relative humidity above 0 and up to 1.
///
/// Idealises: saturation pressure by a Magnus form over water; good to 0.1 °C above freezing.
/// Symbols: g = ln(RH) + a T/(b + T); T_dew = b g/(a - g); a 17.625, b 243.04 °C.
/// Source: Alduchov & Eskridge 1996, Improved Magnus Form Approximation of Saturation Vapor
/// Pressure, J. Appl. Meteorol. 35. Status: coefficients published.
/// Error: std::invalid_argument outside -100 to 100 °C or for a fraction outside (0, 1].
double dew_point_from_humidity_c(double air_c, double humidity_fraction);

/// Relative humidity, 0 to 1, of air with the given dew point: the inverse of
/// dew_point_from_humidity_c. A dew point above the air counts as saturated.
/// Error: std::invalid_argument outside -100 to 100 °C.
double humidity_fraction(double air_c, double dew_point_c);

/// Air pressure of the standard atmosphere at sea level, Pa.
inline constexpr double sea_level_pressure_pa = 101325.0;

/// Air pressure of the standard atmosphere at an elevation above sea level, Pa.
///
/// Idealises: the weather changes it by up to 2 % either way.
/// Symbols: p = 101325 (1 - 2.25577e-5 z)^5.2559, z in m. Range -5000 to 11000 m.
/// Source: ICAO standard atmosphere as ASHRAE Fundamentals, psychrometrics, eq. 3, gives it.
/// Status: published. Error: std::invalid_argument outside the range.
double air_pressure_pa(double elevation_m);

/// Heat absorbed by a kilogram of water that evaporates at `water_c`, J/kg.
///
/// Range -40 to 100 °C, straight-line fit (0.1 % between 0 and 50 °C).
/// Source: textbook form 2500.8 - 2.36 T kJ/kg (Rogers & Yau, A Short Course in Cloud Physics).
/// Status: from memory. Error: std::invalid_argument if not finite.
double latent_heat_j_kg(double water_c);

}  // namespace slabtide
