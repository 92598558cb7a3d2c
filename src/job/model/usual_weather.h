#pragma once

#include "slabtide/core/units.h"

namespace slabtide {

/// The day's mean wind at 10 m where nobody tells it: 7 mph, a light breeze (ours). The sky is then
/// taken as clear, which dries and heats the most.
inline constexpr double usual_wind_10m_m_s = 7.0 * m_s_per_mph;

}  // namespace slabtide
