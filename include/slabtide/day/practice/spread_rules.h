#pragma once

namespace slabtide {

/// How far each thing a plan rests on may be off, from data/practice.toml: one time in ten it
/// is further off than this to the one side, one time in ten to the other.
struct SpreadRules {
  // Of a forecast just issued; all four have doubled after `forecast_doubles_in_h`.
  double air_k = 0.0;
  double dew_point_k = 0.0;
  double wind_fraction = 0.0;
  double cloud_fraction = 0.0;
  double forecast_doubles_in_h = 0.0;
  double unknown_age_h = 0.0;  ///< of a forecast that does not say when it was issued, at placing
  double concrete_k = 0.0;     ///< at discharge
  double convection_fraction = 0.0;
  double evaporation_fraction = 0.0;
  double absorptance = 0.0;
  double set_supplier_fraction = 0.0;   ///< the supplier's set times
  double set_estimated_fraction = 0.0;  ///< those estimated from the mix
  double set_span_fraction = 0.0;       ///< between initial and final set
  double activation_energy_fraction = 0.0;
  double admixture_fraction = 0.0;  ///< of their shift
  double bleed_fraction = 0.0;
  double late_min = 0.0;       ///< the first load comes later than this
  double early_min = 0.0;      ///< or this much earlier
  double pace_fraction = 0.0;  ///< of placing
};

}  // namespace slabtide
