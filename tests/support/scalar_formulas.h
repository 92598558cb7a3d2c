#pragma once

#include "slabtide/slab/column/column.h"
#include "slabtide/slab/material/mix_parameters.h"
#include "slabtide/weather/site/site_weather.h"

// The formulas of the columns' core (documented in src/slab/*-inl.h) for a single double, so that
// tests can call them one at a time; and formulas to compare the core with.

namespace slabtide::test {

double hydration_rate(double concrete_c, double activation_energy_j_mol);
double hydration_degree(double equivalent_age_h, const HydrationParameters& hydration);
double settling_rate(double concrete_c);
double bleed_fraction(double set_age_h, double placed_age_h, double settled_fraction,
                      const SettingParameters& setting);
double resistance_psi(double set_age_h, const SettingParameters& setting);
double strength_psi(double set_age_h, const StrengthParameters& strength);
double surface_wetness(double lost_kg_m2, bool curing_compound_on);
double menzel_coefficient_kg_m2_h_pa(double wind_m_s, double still_factor = 1.0);
double forced_convection_w_m2k(double wind_m_s);
double absorbed_longwave_w_m2(double air_c, double sky_emissivity, double sky_view);

struct Convection {
  double h_w_m2k = 0.0;
  double slope_w_m2k2 = 0.0;
};
Convection doe2_convection(double surface_less_air_k, double forced_w_m2k);

struct SurfaceConditions {
  double absorbed_w_m2 = 0.0;
  double air_c = 0.0;
  double vapour_pressure_pa = 0.0;
  double forced_w_m2k = 0.0;
  double convection_factor = 1.0;
  double evaporation_kg_m2_h_pa = 0.0;
};
struct SurfaceExchange {
  double w_m2 = 0.0;
  double slope_w_m2k = 0.0;
  double evaporation_kg_m2_h = 0.0;
};
SurfaceExchange surface_exchange(const SurfaceConditions& conditions, double surface_c);

/// At `time_s` seconds from the grid's start, with the weather interpolated linearly. The bare
/// surface is as dark for the sun as it is wet.
SurfaceConditions conditions_at(const ColumnCase& column, const SiteWeather& weather, double time_s,
                                double wetness);

/// Rate of heat release, W/m3, which the core takes as the difference of two degrees of hydration:
/// Q = H_u C_c [(tau/a)^beta beta/a + 4 h/(a (a^4 + h))] alpha exp[(E/R)(1/T_r - 1/T)].
double heat_rate_w_m3(double equivalent_age_h, double concrete_c,
                      const HydrationParameters& hydration);

/// Menzel's equation as published: lb/ft2/h from psi and mph.
double menzel_evaporation_lb_ft2_h(double surface_vapour_psi, double air_vapour_psi,
                                   double wind_mph);

/// A formula for checking by hand, kg/m2/h: E = 5([Tc+18]^2.5 - r[Ta+18]^2.5)(V+4)e-6, °C, km/h.
///
/// Gives 8 to 24 % more than Menzel when the air is much colder than the concrete. Range:
/// temperatures above -18 °C. Never below 0.
/// Source: Uno 1998, Plastic Shrinkage Cracking and Evaporation Formulas, ACI Materials
/// Journal 95-M34. Status: published.
double uno_evaporation_kg_m2_h(double concrete_c, double air_c, double humidity_fraction,
                               double wind_km_h);

/// The same in its US form, lb/ft2/h: E = (Tc^2.5 - r Ta^2.5)(1 + 0.4 V)e-6, °F, mph. Because the
/// two forms are rounded separately, the SI form gives about 1 % more.
double uno_evaporation_lb_ft2_h(double concrete_f, double air_f, double humidity_fraction,
                                double wind_mph);

}  // namespace slabtide::test
