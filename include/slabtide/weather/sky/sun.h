#pragma once

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// Where the sun stands in the sky, and how far.
struct SunPosition {
  double zenith_deg = 0.0;   ///< true, without refraction
  double azimuth_deg = 0.0;  ///< clockwise from north
  double distance_au = 1.0;
};

/// Where the sun stands: within 0.02 deg of a precise ephemeris for 2024-2036 and
/// |latitude| <= 65.
///
/// Idealises: the sun's mean orbit with the equation of centre, nutation in one term, seen
/// from the earth's centre (parallax up to 0.0024 deg left out), UTC taken for both UT1 and
/// terrestrial time (0.001 deg).
/// Source: Meeus 1998, Astronomical Algorithms, chapter 25 and 28, in the form of the US NOAA
/// solar calculation. Status: published. Departure: none.
/// Error: std::invalid_argument for a special time or a place that is not on the globe.
SunPosition sun_position(UtcTime time, double latitude_deg, double longitude_deg);

/// When the sun rises and sets.
struct SunTimes {
  /// Upper limb on a flat horizon (zenith 90.833). Where the sun stays up, rise and set are
  /// half a day before and after its noon; where it stays down, both are its noon.
  enum class Kind { ordinary, always_up, never_up } kind = Kind::ordinary;
  UtcTime rise;
  UtcTime set;
};

/// Rise and set about the solar noon nearest to `time`. Within ten seconds of a precise
/// ephemeris for |latitude| <= 65; refraction of the day itself moves both by a minute or so.
/// Error: as sun_position.
SunTimes sun_times_about(UtcTime time, double latitude_deg, double longitude_deg);

/// Rise and set about the solar noon that falls in the civil day `date` of the zone. In a
/// white night the set may lie past midnight.
/// Error: as sun_position.
SunTimes sun_times(Date date, const TimeZone& zone, double latitude_deg, double longitude_deg);

}  // namespace slabtide
