#pragma once

namespace slabtide {

/// What `compare` tries and how finely it tells choices apart, from data/practice.toml.
struct CompareRules {
  double retarder_low_ml_100kg = 0.0;
  double retarder_high_ml_100kg = 0.0;
  double accelerator_ml_100kg = 0.0;  ///< without chloride
  double earliest_start_h = 0.0;      ///< local clock: no plant opens before
  double latest_start_h = 0.0;
  double sunny_fraction = 0.0;    ///< of direct sun from placing to initial set: a sunny zone
  double windbreak_factor = 0.0;  ///< on the wind at the slab
  double worth_min = 0.0;         ///< fewer minutes late than this are no gain
  double search_k = 0.0;          ///< how much warmer and cooler the turning point is looked for
};

}  // namespace slabtide
