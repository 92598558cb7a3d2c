#pragma once

#include "slabtide/slab/material/mix_parameters.h"

namespace slabtide {

/// Evaporation of free water from fresh concrete, kg/m2/h: the rate the program uses.
///
/// Idealises: a free water surface at the temperature of the concrete's surface; wind that
/// of the mean about 0.5 m (20 in) above the slab. Never below 0 (dew is left out).
/// Symbols: W = 0.44 (e_0 - e_a)(0.253 + 0.096 V) lb/ft2/h, pressures psi, V mph.
/// Source: Menzel 1954, Causes and prevention of crack development in plastic concrete.
/// Status: from memory; field rates differ by up to 40 % (Hover, ACI SP-338, 2020, published).
double menzel_evaporation_kg_m2_h(double surface_vapour_pa, double air_vapour_pa, double wind_m_s);

/// The same as published: lb/ft2/h from psi and mph.
double menzel_evaporation_lb_ft2_h(double surface_vapour_psi, double air_vapour_psi,
                                   double wind_mph);

/// What stands before (e_0 - e_a) in SI: kg/m2/h for each Pa. The part without wind (0.253) has
/// a factor for thinner air (thin_air.h).
double menzel_coefficient_kg_m2_h_pa(double wind_m_s, double still_factor = 1.0);

/// The figure for checking by hand, kg/m2/h: E = 5([Tc+18]^2.5 - r[Ta+18]^2.5)(V+4)e-6, °C, km/h.
///
/// Reads 8 to 24 % above Menzel when the air is much colder than the concrete. Range:
/// temperatures above -18 °C. Never below 0.
/// Source: Uno 1998, Plastic Shrinkage Cracking and Evaporation Formulas, ACI Materials
/// Journal 95-M34. Status: published.
double uno_evaporation_kg_m2_h(double concrete_c, double air_c, double humidity_fraction,
                               double wind_km_h);

/// The same in its US form, lb/ft2/h: E = (Tc^2.5 - r Ta^2.5)(1 + 0.4 V)e-6, °F, mph. The two
/// are rounded apart: the SI form reads about 1 % higher.
double uno_evaporation_lb_ft2_h(double concrete_f, double air_f, double humidity_fraction,
                                double wind_mph);

/// Evaporation rates worth a word, kg/m2/h. Published: caution FHWA-HRT-05-038, precautions
/// the same and ACI 305.
inline constexpr double evaporation_caution_kg_m2_h = 0.5;
inline constexpr double evaporation_precautions_kg_m2_h = 1.0;
/// On both for mixes that hardly bleed. Published in trade slides.
inline constexpr double hardly_bleeds_flag_factor = 0.5;

/// Drying worth a word.
enum class EvaporationFlag { none, caution, precautions };
/// Of a rate, kg/m2/h.
EvaporationFlag evaporation_flag(double rate_kg_m2_h, bool hardly_bleeds);

/// Share of the free-water rate at which a surface of the given set age still evaporates:
/// all of it to initial set, falling in a straight line to a tenth at final set; a tenth
/// after. Under a curing film at most 0.05. Status: ours.
double surface_wetness(double set_age_h, const SettingParameters& setting, bool curing_compound_on);

}  // namespace slabtide
