#pragma once

namespace slabtide {

/// What `compare` tries and how finely it distinguishes choices, from data/practice.toml.
struct CompareRules {
  double retarder_low_ml_100kg = 0.0;
  double retarder_high_ml_100kg = 0.0;
  double accelerator_ml_100kg = 0.0;  ///< without chloride
  double earliest_start_h = 0.0;      ///< local clock: no plant opens earlier
  double latest_start_h = 0.0;
  double sunny_fraction = 0.0;    ///< of direct sun from placing to initial set, for a zone to
                                  ///< count as sunny
  double windbreak_factor = 0.0;  ///< multiplies the wind at the slab
  double worth_min = 0.0;         ///< a smaller reduction in minutes late is no gain
  double search_k = 0.0;          ///< how far the turning point is searched, warmer and cooler
};

}  // namespace slabtide
