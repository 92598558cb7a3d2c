#include "support/scalar_formulas.h"

#include <algorithm>
#include <cmath>

#include "slab/column/cell_weather-inl.h"
#include "slab/column/cell_weather.h"
#include "slab/process/bleed-inl.h"
#include "slab/process/hydration-inl.h"
#include "slab/process/hydration.h"
#include "slab/process/strength-inl.h"
#include "slabtide/core/units.h"

namespace slabtide::test {
namespace {

namespace formula = HWY_NAMESPACE;
using formula::GridPlace;

double between(const std::vector<double>& values, GridPlace place) {
  const double before = values[place.before];
  return before + place.fraction * (values[place.before + 1] - before);
}

/// The properties of a column that its surface conditions depend on.
struct Surroundings {
  double absorptance;
  double dry_absorptance;
  double sky_view;
  double convection_factor;
  double evaporation_factor;
};

// Uno 1998, eq. in °C and km/h, and in °F and mph. Published.
constexpr double uno_exponent = 2.5;
constexpr double uno_si_scale = 5.0e-6;
constexpr double uno_si_offset_c = 18.0;
constexpr double uno_si_wind_km_h = 4.0;
constexpr double uno_us_scale = 1.0e-6;
constexpr double uno_us_wind_per_mph = 0.4;

/// t^2.5; temperatures below the formula's zero count as that zero.
double uno_power(double t) { return std::pow(std::max(t, 0.0), uno_exponent); }

}  // namespace

double hydration_rate(double concrete_c, double activation_energy_j_mol) {
  return formula::hydration_rate(concrete_c, activation_energy_j_mol);
}

double hydration_degree(double equivalent_age_h, const HydrationParameters& hydration) {
  return formula::hydration_degree(equivalent_age_h, hydration);
}

double settling_rate(double concrete_c) { return formula::settling_rate(concrete_c); }

double bleed_fraction(double set_age_h, double placed_age_h, double settled_fraction,
                      const SettingParameters& setting) {
  return formula::bleed_fraction(set_age_h, placed_age_h, settled_fraction, setting);
}

double resistance_psi(double set_age_h, const SettingParameters& setting) {
  return formula::resistance_psi(set_age_h, setting, formula::resistance_exponent(setting));
}

double strength_psi(double set_age_h, const StrengthParameters& strength) {
  return formula::strength_psi(set_age_h, strength);
}

double surface_wetness(double lost_kg_m2, bool curing_compound_on) {
  return formula::surface_wetness(lost_kg_m2, curing_compound_on);
}

double menzel_coefficient_kg_m2_h_pa(double wind_m_s, double still_factor) {
  return formula::menzel_coefficient_kg_m2_h_pa(wind_m_s, still_factor);
}

double forced_convection_w_m2k(double wind_m_s) {
  return formula::forced_convection_w_m2k(wind_m_s);
}

double absorbed_longwave_w_m2(double air_c, double sky_emissivity, double sky_view) {
  return formula::absorbed_longwave_w_m2(air_c, sky_emissivity, sky_view);
}

Convection doe2_convection(double surface_less_air_k, double forced_w_m2k) {
  const auto found = formula::doe2_convection(surface_less_air_k, forced_w_m2k);
  return {found.h_w_m2k, found.slope_w_m2k2};
}

SurfaceExchange surface_exchange(const SurfaceConditions& conditions, double surface_c) {
  const auto found = formula::surface_exchange(conditions, surface_c);
  return {found.w_m2, found.slope_w_m2k, found.evaporation_kg_m2_h};
}

SurfaceConditions conditions_at(const ColumnCase& column, const SiteWeather& weather, double time_s,
                                double wetness) {
  const GridPlace place = formula::place_on(weather.grid, time_s);
  const ThinAir air = thin_air(weather.air_pressure_pa);
  const double wind_m_s = between(weather.wind_slab_m_s, place);
  const formula::WeatherNow<double> now{
      between(weather.air_c, place),
      between(weather.vapour_pressure_pa, place),
      formula::wind_convection_w_m2k(wind_m_s, air),
      formula::menzel_coefficient_kg_m2_h_pa(wind_m_s, air.still_evaporation),
      between(weather.sky_emissivity, place),
      between(column.exposure->shortwave_w_m2, place)};
  const Surroundings fixed{column.absorptance, dry_absorptance_of(column),
                           column.exposure->sky_view, column.convection_factor,
                           column.evaporation_factor};
  const auto found =
      formula::surface_conditions(now, fixed, air, wetness, formula::surface_dampness(wetness));
  return {.absorbed_w_m2 = found.absorbed_w_m2,
          .air_c = found.air_c,
          .vapour_pressure_pa = found.vapour_pressure_pa,
          .forced_w_m2k = found.forced_w_m2k,
          .convection_factor = found.convection_factor,
          .evaporation_kg_m2_h_pa = found.evaporation_kg_m2_h_pa};
}

double heat_rate_w_m3(double equivalent_age_h, double concrete_c,
                      const HydrationParameters& hydration) {
  const double age_h = equivalent_age_h - hydration.shift_h;
  if (!(age_h > 0.0)) return 0.0;
  const double held_h4 = formula::held_back_h4(hydration);
  const double degree_per_h =
      (std::pow(hydration.tau_h / age_h, hydration.beta) * (hydration.beta / age_h) +
       4.0 * held_h4 / (age_h * (std::pow(age_h, 4.0) + held_h4))) *
      hydration_degree(equivalent_age_h, hydration);
  return heat_capacity_of_hydration_j_m3(hydration) * degree_per_h *
         hydration_rate(concrete_c, hydration.activation_energy_j_mol) / seconds_per_hour;
}

double menzel_evaporation_lb_ft2_h(double surface_vapour_psi, double air_vapour_psi,
                                   double wind_mph) {
  return std::max(0.0,
                  formula::menzel_wind_term(wind_mph, 1.0) * (surface_vapour_psi - air_vapour_psi));
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

}  // namespace slabtide::test
