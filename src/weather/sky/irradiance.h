#pragma once

#include "slabtide/weather/air/moist_air.h"

namespace slabtide {

/// Global irradiance on the horizontal under a clear sky, W/m2; 0 if the sun is down.
///
/// Idealises: one mean turbidity for all places. About 5-10 % rms (from memory).
/// Symbols: GHI = 1098 cosZ exp(-0.059 p / (p0 cosZ)), Z the true zenith angle, p the air
/// pressure, p0 that of sea level.
/// Source: Haurwitz 1945, Insolation in relation to cloudiness and cloud density, J. Meteorol.
/// 2. Status: published for p = p0. Departure: scaled by p / p0, for the part of the air above the
/// site, ours (0.9 % more light from a high sun at 1500 m).
/// Error: std::invalid_argument if `cos_zenith` is not within -1 to 1 or the pressure is not
/// positive.
double clear_sky_w_m2(double cos_zenith, double air_pressure_pa = sea_level_pressure_pa);

/// Fraction of the clear-sky irradiance that comes through a cloud fraction of 0 to 1.
///
/// Symbols: 1 - 0.75 N^3.4. Source: Kasten & Czeplak 1980, Solar and terrestrial radiation
/// dependent on the amount and type of cloud, Solar Energy 24. Status: published.
/// Error: std::invalid_argument for a fraction outside 0 to 1.
double cloud_transmission(double cloud_fraction);

/// Sun on a horizontal surface at the top of the atmosphere, W/m2: 1361/r² cosZ; 0 if the sun is
/// down.
/// Source: solar constant of Kopp & Lean 2011. Status: published.
/// Error: std::invalid_argument for a distance that is not positive or as clear_sky_w_m2.
double extraterrestrial_w_m2(double cos_zenith, double distance_au);

/// Diffuse fraction of the global irradiance, from the clearness index (global over
/// extraterrestrial; above 1 it is taken as 1).
///
/// Idealises: hourly means of five US places; its branches meet within 0.0003.
/// Source: Erbs, Klein & Duffie 1982, Estimation of the diffuse radiation fraction for
/// hourly, daily and monthly-average global radiation, Solar Energy 28. Status: published.
/// Error: std::invalid_argument for an index below 0 or not a number.
double diffuse_fraction(double clearness);

/// Sunlight on an open horizontal surface, split into beam and sky light, W/m2.
struct SplitIrradiance {
  double beam_horizontal_w_m2 = 0.0;
  double diffuse_w_m2 = 0.0;
};

/// `global_w_m2` on the horizontal, split by Erbs. With the sun below 3.7 deg (cosZ < 0.065) all of
/// it counts as sky light, because the index would divide by almost zero [ours, usual]. The beam
/// never exceeds the extraterrestrial irradiance: a forecast's hourly mean can be more light than a
/// low sun gives [ours].
/// Error: std::invalid_argument for a negative irradiance or as the functions above.
SplitIrradiance split_irradiance(double global_w_m2, double cos_zenith, double distance_au);

}  // namespace slabtide
