#pragma once

namespace slabtide {

/// Evaporation of free water from fresh concrete, kg/m2/h: the rate the program uses.
///
/// Idealises: a free water surface at the temperature of the concrete's surface; mean wind about
/// 0.5 m (20 in) above the slab. Never below 0 (dew is left out).
/// Symbols: W = 0.44 (e_0 - e_a)(0.253 + 0.096 V) lb/ft2/h, pressures psi, V mph.
/// Source: Menzel 1954, Causes and prevention of crack development in plastic concrete.
/// Status: from memory; field rates differ by up to 40 % (Hover, ACI SP-338, 2020, published).
double menzel_evaporation_kg_m2_h(double surface_vapour_pa, double air_vapour_pa, double wind_m_s);

}  // namespace slabtide
