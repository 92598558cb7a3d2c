#pragma once

#include "slabtide/core/civil_time.h"

namespace slabtide {

struct SunPosition {
  double zenith_deg = 0.0;   ///< true, without refraction
  double azimuth_deg = 0.0;  ///< clockwise from north
  double distance_au = 1.0;
};

/// Within 0.02 deg of a precise ephemeris for 2024-2036 and |latitude| <= 65.
SunPosition sun_position(UtcTime time, double latitude_deg, double longitude_deg);

struct SunTimes {
  /// Upper limb on a flat horizon (zenith 90.833). Where the sun does not rise or set
  /// that day both are the day's ends and `kind` says which.
  enum class Kind { ordinary, always_up, never_up } kind = Kind::ordinary;
  UtcTime rise;
  UtcTime set;
};

/// Rise and set within the civil day `date` of the zone.
SunTimes sun_times(Date date, const TimeZone& zone, double latitude_deg, double longitude_deg);

}  // namespace slabtide
