#pragma once

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// The sun's position in the sky, and its distance.
struct SunPosition {
  double zenith_deg = 0.0;   ///< true, without refraction
  double azimuth_deg = 0.0;  ///< clockwise from north
  double distance_au = 1.0;
};

/// The sun's position, within 0.02 deg of a precise ephemeris for 2024-2036 and |latitude| <= 65.
///
/// Idealises: the sun's mean orbit with the equation of centre, nutation in one term, seen from the
/// earth's centre (parallax up to 0.0024 deg is left out), and UTC used for both UT1 and
/// terrestrial time (0.001 deg).
/// Source: Meeus 1998, Astronomical Algorithms, chapter 25 and 28, in the form of the US NOAA
/// solar calculation. Status: published. Departure: none.
/// Error: std::invalid_argument for a special time or impossible coordinates.
SunPosition sun_position(UtcTime time, double latitude_deg, double longitude_deg);

/// When the sun rises and sets.
struct SunTimes {
  /// Upper limb on a flat horizon (zenith 90.833). If the sun stays up, rise and set are half a day
  /// before and after its noon; if it stays down, both are at its noon.
  enum class Kind { ordinary, always_up, never_up } kind = Kind::ordinary;
  UtcTime rise;
  UtcTime set;
};

/// Rise and set around the solar noon nearest to `time`. Within ten seconds of a precise ephemeris
/// for |latitude| <= 65; the day's actual refraction moves both by a minute or so.
/// Error: as sun_position.
SunTimes sun_times_about(UtcTime time, double latitude_deg, double longitude_deg);

/// Rise and set around the solar noon that falls on the civil day `date` of the zone. In a white
/// night the sunset may be after midnight.
/// Error: as sun_position.
SunTimes sun_times(Date date, const TimeZone& zone, double latitude_deg, double longitude_deg);

}  // namespace slabtide
