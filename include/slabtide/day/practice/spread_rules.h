#pragma once

namespace slabtide {

/// How uncertain each input of a plan is, from data/practice.toml: one time in ten it is off by
/// more than this in one direction, and one time in ten in the other.
struct SpreadRules {
  // For a forecast just issued; all four have doubled after `forecast_doubles_in_h`.
  double air_k = 0.0;
  double dew_point_k = 0.0;
  double wind_fraction = 0.0;
  double cloud_fraction = 0.0;
  double forecast_doubles_in_h = 0.0;
  double unknown_age_h = 0.0;  ///< at placing, of a forecast that does not give its issue
  double concrete_k = 0.0;     ///< at discharge
  double convection_fraction = 0.0;
  double evaporation_fraction = 0.0;
  double absorptance = 0.0;
  double set_supplier_fraction = 0.0;   ///< for the supplier's set times
  double set_estimated_fraction = 0.0;  ///< for set times estimated from the mix
  double set_span_fraction = 0.0;       ///< between initial and final set
  double activation_energy_fraction = 0.0;
  double admixture_fraction = 0.0;  ///< of the admixtures' shift
  double bleed_fraction = 0.0;
  double late_min = 0.0;       ///< how much later the first load may come
  double early_min = 0.0;      ///< how much earlier it may come
  double pace_fraction = 0.0;  ///< of placing
};

}  // namespace slabtide
