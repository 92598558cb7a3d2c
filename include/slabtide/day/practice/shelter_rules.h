#pragma once

namespace slabtide {

/// Where shade and a windbreak are worth putting up, from data/practice.toml.
struct ShelterRules {
  double shade_max_m2 = 0.0;            ///< nobody shades a larger zone for a day
  double shade_max_wind_m_s = 0.0;      ///< at 10 m; in more no canopy stands
  double shade_min_air_c = 0.0;         ///< in cooler air a slab wants the sun
  double windbreak_min_wind_m_s = 0.0;  ///< at the slab; less dries too little to be worth a screen
};

}  // namespace slabtide
