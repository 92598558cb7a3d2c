#pragma once

#include <numbers>

namespace slabtide {

// Conversions for input and output. Inside, everything is SI with °C, except psi, hours of set age
// and kg/m2/h, which the published formulas and the trade use. Factors: NIST SP 811 (2008),
// appendix B.8, exact unless noted.

/// Time.
inline constexpr double seconds_per_minute = 60.0;
inline constexpr double seconds_per_hour = 3600.0;
inline constexpr int minutes_per_hour = 60;
inline constexpr double hours_per_day = 24.0;

/// Fractions shown as percent.
inline constexpr double percent_per_one = 100.0;

/// Angle.
inline constexpr double radians_per_degree = std::numbers::pi / 180.0;

/// Temperature.
constexpr double celsius_from_fahrenheit(double f) { return (f - 32.0) / 1.8; }
constexpr double fahrenheit_from_celsius(double c) { return c * 1.8 + 32.0; }
constexpr double kelvin_from_celsius(double c) { return c + 273.15; }
/// A temperature difference.
constexpr double fahrenheit_from_kelvin_difference(double k) { return k * 1.8; }

/// Length, area, volume.
inline constexpr double metres_per_foot = 0.3048;
inline constexpr double metres_per_inch = 0.0254;
constexpr double m_from_ft(double ft) { return ft * metres_per_foot; }
constexpr double ft_from_m(double m) { return m / metres_per_foot; }
constexpr double m_from_in(double in) { return in * metres_per_inch; }
constexpr double in_from_m(double m) { return m / metres_per_inch; }
inline constexpr double mm_per_m = 1000.0;
inline constexpr double mm_per_inch = 25.4;
constexpr double m_from_mm(double mm) { return mm / mm_per_m; }
constexpr double mm_from_in(double in) { return in * mm_per_inch; }
constexpr double m2_from_ft2(double ft2) { return ft2 * metres_per_foot * metres_per_foot; }
constexpr double ft2_from_m2(double m2) { return m2 / (metres_per_foot * metres_per_foot); }
inline constexpr double m3_per_yd3 = 0.764554857984;
constexpr double m3_from_yd3(double yd3) { return yd3 * m3_per_yd3; }
constexpr double yd3_from_m3(double m3) { return m3 / m3_per_yd3; }

/// Speed.
inline constexpr double m_s_per_mph = 0.44704;
constexpr double m_s_from_mph(double mph) { return mph * m_s_per_mph; }
constexpr double mph_from_m_s(double m_s) { return m_s / m_s_per_mph; }
constexpr double m_s_from_km_h(double km_h) { return km_h / 3.6; }
constexpr double km_h_from_m_s(double m_s) { return m_s * 3.6; }
constexpr double m_s_from_knots(double kn) { return kn * 1852.0 / 3600.0; }

/// Mass, and mass per volume or area.
inline constexpr double kg_per_lb = 0.45359237;
constexpr double lb_from_kg(double kg) { return kg / kg_per_lb; }
constexpr double kg_m3_from_lb_yd3(double lb_yd3) { return lb_yd3 * kg_per_lb / m3_per_yd3; }
constexpr double lb_yd3_from_kg_m3(double kg_m3) { return kg_m3 * m3_per_yd3 / kg_per_lb; }
/// Evaporation rate, lb/ft2/h to kg/m2/h: 0.2 becomes 0.976.
constexpr double kg_m2_h_from_lb_ft2_h(double v) {
  return v * kg_per_lb / (metres_per_foot * metres_per_foot);
}
constexpr double lb_ft2_h_from_kg_m2_h(double v) {
  return v * metres_per_foot * metres_per_foot / kg_per_lb;
}

/// kg·9.80665/in², rounded as NIST gives it.
inline constexpr double pa_per_psi = 6894.757;
constexpr double pa_from_psi(double psi) { return psi * pa_per_psi; }
constexpr double psi_from_pa(double pa) { return pa / pa_per_psi; }
constexpr double psi_from_mpa(double mpa) { return mpa * 1.0e6 / pa_per_psi; }
constexpr double mpa_from_psi(double psi) { return psi * pa_per_psi / 1.0e6; }

/// Admixture dose: US fluid ounces (29.5735 mL) per hundredweight (45.359237 kg) of cementitious
/// material.
inline constexpr double ml_per_100kg_per_floz_cwt = 29.5735295625 / 45.359237 * 100.0;
constexpr double floz_cwt_from_ml_100kg(double v) { return v / ml_per_100kg_per_floz_cwt; }
constexpr double ml_100kg_from_floz_cwt(double v) { return v * ml_per_100kg_per_floz_cwt; }

/// Liquid volume, US gallons.
inline constexpr double l_per_gal = 3.785411784;
inline constexpr double l_per_floz = l_per_gal / 128.0;
constexpr double gal_from_l(double l) { return l / l_per_gal; }

/// Insulation R, h·ft²·°F/Btu to m²K/W.
constexpr double m2k_w_from_r_us(double r) { return r * 0.1761; }

}  // namespace slabtide
