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
  double cooler_k = 0.0;     ///< what chilled water or ice takes off the concrete, once and twice
  double warmer_k = 0.0;     ///< what hot water adds to it, once and twice
  double min_load_m3 = 0.0;  ///< a plant sends no less
  double next_truck_min = 0.0;      ///< a slab's edge may wait so long for the next truck
  double own_truck_min = 0.0;       ///< how much later a zone with its own truck is placed
  double blanket_m2k_w = 0.0;       ///< of the thicker blankets tried
  double worth_min = 0.0;           ///< a smaller reduction in minutes late is no gain
  double dark_late_fraction = 0.0;  ///< of the minutes of finishing in the dark, counted as late
  double search_k = 0.0;            ///< how far the turning point is searched, warmer and cooler
};

}  // namespace slabtide
