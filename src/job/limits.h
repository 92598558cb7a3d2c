#pragma once

#include "quantity.h"
#include "slabtide/core/units.h"

// What the figures of a pour may be, wherever they are told: in a job file, on the command line
// or by a forecast.

namespace slabtide {

inline constexpr Range latitudes_deg{-90.0, 90.0};
inline constexpr Range longitudes_deg{-180.0, 180.0};
/// The rules of civil time that are read hold for these years, and the sun's position.
inline constexpr Range pour_years{2007.0, 2099.0};
/// Wider than any day concrete is placed on; a cold or hot one gets its cautions later.
inline constexpr Range air_temperatures_c{celsius_from_fahrenheit(-40.0),
                                          celsius_from_fahrenheit(130.0)};
/// A gale: nothing is placed in more.
inline constexpr Range mean_winds_m_s{0.0, m_s_from_mph(55.0)};
/// Drier than any desert afternoon is a slip.
inline constexpr Range air_humidities{0.02, 1.0};
inline constexpr Range whole_shares{0.0, 1.0};
inline constexpr Range slab_thicknesses_m{m_from_in(2.0), m_from_in(24.0)};
/// Concrete at the chute: cold enough to freeze, or too hot to be accepted anywhere.
inline constexpr Range discharges_c{celsius_from_fahrenheit(35.0), celsius_from_fahrenheit(110.0)};

}  // namespace slabtide
