#pragma once

namespace slabtide {

/// How far a field observation may be off, from data/practice.toml: one in ten is further off in
/// one direction, and one in ten in the other.
struct ObservationRules {
  // How far the time noted may be from the time the concrete really was in that state.
  double placed_min = 0.0;
  double sheen_gone_min = 0.0;
  double edge_held_min = 0.0;
  double thumbprint_min = 0.0;
  double print_firm_min = 0.0;
  double initial_set_min = 0.0;
  double sawed_min = 0.0;
  /// How far off the model itself may be for any of these except placing, because weather varies
  /// within hours, which the uncertain inputs do not describe.
  double model_min = 0.0;
  double concrete_k = 0.0;
  double surface_k = 0.0;
  double air_k = 0.0;
  double wind_fraction = 0.0;
  double humidity = 0.0;  ///< of relative humidity, 0 to 1
  /// The fraction of an observation's variance that all of its kind on a zone share: the same
  /// thumb, the same place, the same thermometer. Only the rest averages out with repetition.
  double shared_fraction = 0.0;
  /// An observation further than this many standard deviations from what was expected does not
  /// count.
  double unbelievable_z = 0.0;
};

}  // namespace slabtide
