#pragma once

namespace slabtide {

/// How uncertain each input of a plan is, from data/practice.toml: one time in ten it is off by
/// more than this in one direction, and one time in ten in the other.
struct SpreadRules {
  // For a forecast just issued; all five have doubled after `forecast_doubles_in_h`.
  double air_k = 0.0;
  double night_air_k = 0.0;  ///< after sunset
  double dew_point_k = 0.0;
  double wind_fraction = 0.0;
  double cloud_fraction = 0.0;
  double forecast_doubles_in_h = 0.0;
  double wind_ratio_fraction = 0.0;  ///< wind at the slab over the wind at 10 m, if not measured
  double unknown_age_h = 0.0;        ///< at placing, of a forecast that does not give its issue
  double concrete_k = 0.0;           ///< at discharge
  double convection_fraction = 0.0;
  double evaporation_fraction = 0.0;
  double absorptance = 0.0;
  double set_supplier_fraction = 0.0;   ///< for the supplier's set times
  double set_estimated_fraction = 0.0;  ///< for set times estimated from the mix
  double set_span_fraction = 0.0;       ///< between initial and final set
  double activation_energy_fraction = 0.0;
  double admixture_fraction = 0.0;  ///< of the admixtures' shift
  double bleed_fraction = 0.0;
  double bleed_time_fraction = 0.0;    ///< of the time that the solids take to settle
  double strength_fraction = 0.0;      ///< at an early age, of a mix whose 28-day strength is known
  double strength_margin_psi = 0.0;    ///< of the margin over f'c, if the job does not say it
  double saw_strength_fraction = 0.0;  ///< of the strength a saw waits for
  double aggregate_saw_fraction = 0.0;        ///< besides, of it where the aggregate is unknown
  double aggregate_expansion_fraction = 0.0;  ///< of the expansion then
  double stress_fraction = 0.0;               ///< over the tensile strength
  double ready_fraction = 0.0;                ///< of the resistances at which windows open
  double too_stiff_fraction = 0.0;            ///< and close
  double base_k = 0.0;           ///< of the top of the base, as run under sun and night
  double base_measured_k = 0.0;  ///< of a ground temperature given in the job
  double late_min = 0.0;         ///< how much later the first load may come
  double early_min = 0.0;        ///< how much earlier it may come
  double pace_fraction = 0.0;    ///< of placing
};

}  // namespace slabtide
