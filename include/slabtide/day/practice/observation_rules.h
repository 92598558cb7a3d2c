#pragma once

namespace slabtide {

/// How far a field reading may be off, from data/practice.toml: one in ten is further off to
/// the one side, one in ten to the other.
struct ObservationRules {
  // How far from the hour noted the concrete really was so far.
  double placed_min = 0.0;
  double sheen_gone_min = 0.0;
  double edge_held_min = 0.0;
  double thumbprint_min = 0.0;
  double print_firm_min = 0.0;
  double initial_set_min = 0.0;
  double sawed_min = 0.0;
  /// And how far off the model is by itself on any of those but placing: weather wanders by the
  /// hour, which the uncertain inputs do not.
  double model_min = 0.0;
  double concrete_k = 0.0;
  double surface_k = 0.0;
  double air_k = 0.0;
  double wind_fraction = 0.0;
  double humidity = 0.0;  ///< of relative humidity, 0 to 1
  /// Of a reading's variance that all of its kind on a zone have in common: the same thumb, the
  /// same place, the same thermometer. What the rest comes to falls with every repetition.
  double shared_fraction = 0.0;
  /// So many standard deviations off what was to be expected a reading does not count.
  double unbelievable_z = 0.0;
};

}  // namespace slabtide
