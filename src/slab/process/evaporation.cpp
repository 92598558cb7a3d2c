#include "slabtide/slab/process/evaporation.h"

#include <algorithm>
#include <cmath>

#include "slab/process/evaporation-inl.h"
#include "slabtide/core/units.h"

namespace slabtide {
namespace {

namespace formula = HWY_NAMESPACE;

// Uno 1998, eq. in °C and km/h, and in °F and mph. Published.
constexpr double uno_exponent = 2.5;
constexpr double uno_si_scale = 5.0e-6;
constexpr double uno_si_offset_c = 18.0;
constexpr double uno_si_wind_km_h = 4.0;
constexpr double uno_us_scale = 1.0e-6;
constexpr double uno_us_wind_per_mph = 0.4;

/// (t^2.5); colder than the formula's zero counts as that zero.
double uno_power(double t) { return std::pow(std::max(t, 0.0), uno_exponent); }

}  // namespace

double menzel_evaporation_kg_m2_h(double surface_vapour_pa, double air_vapour_pa, double wind_m_s) {
  return std::max(0.0,
                  menzel_coefficient_kg_m2_h_pa(wind_m_s) * (surface_vapour_pa - air_vapour_pa));
}

double menzel_evaporation_lb_ft2_h(double surface_vapour_psi, double air_vapour_psi,
                                   double wind_mph) {
  return std::max(0.0,
                  formula::menzel_wind_term(wind_mph, 1.0) * (surface_vapour_psi - air_vapour_psi));
}

double menzel_coefficient_kg_m2_h_pa(double wind_m_s, double still_factor) {
  return formula::menzel_coefficient_kg_m2_h_pa(wind_m_s, still_factor);
}

double uno_evaporation_kg_m2_h(double concrete_c, double air_c, double humidity_fraction,
                               double wind_km_h) {
  const double drive = uno_power(concrete_c + uno_si_offset_c) -
                       humidity_fraction * uno_power(air_c + uno_si_offset_c);
  return std::max(0.0, uno_si_scale * drive * (wind_km_h + uno_si_wind_km_h));
}

double uno_evaporation_lb_ft2_h(double concrete_f, double air_f, double humidity_fraction,
                                double wind_mph) {
  const double drive = uno_power(concrete_f) - humidity_fraction * uno_power(air_f);
  return std::max(0.0, uno_us_scale * drive * (1.0 + uno_us_wind_per_mph * wind_mph));
}

EvaporationFlag evaporation_flag(double rate_kg_m2_h, bool hardly_bleeds) {
  const double factor = hardly_bleeds ? hardly_bleeds_flag_factor : 1.0;
  if (rate_kg_m2_h >= factor * evaporation_precautions_kg_m2_h) return EvaporationFlag::precautions;
  if (rate_kg_m2_h >= factor * evaporation_caution_kg_m2_h) return EvaporationFlag::caution;
  return EvaporationFlag::none;
}

double surface_wetness(double set_age_h, const SettingParameters& setting,
                       bool curing_compound_on) {
  return formula::surface_wetness(set_age_h, setting, curing_compound_on);
}

}  // namespace slabtide
