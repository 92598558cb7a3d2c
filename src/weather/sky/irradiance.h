#pragma once

#include "slabtide/weather/air/moist_air.h"

namespace slabtide {

/// Global irradiance on the horizontal under a clear sky, W/m2; 0 with the sun down.
///
/// Idealises: one mean turbidity for all places. About 5-10 % rms (from memory).
/// Symbols: GHI = 1098 cosZ exp(-0.059 p / (p0 cosZ)), Z the true zenith angle, p the air
/// pressure, p0 that of sea level.
/// Source: Haurwitz 1945, Insolation in relation to cloudiness and cloud density, J. Meteorol.
/// 2. Status: published for p = p0. Departure: with p / p0, for the share of the air that lies
/// above the site, ours (0.9 % more light from a high sun at 1500 m).
/// Error: std::invalid_argument if `cos_zenith` is not within -1 to 1 or the pressure is not
/// positive.
double clear_sky_w_m2(double cos_zenith, double air_pressure_pa = sea_level_pressure_pa);

/// Share of the clear-sky irradiance that comes through a cloud share of 0 to 1.
///
/// Symbols: 1 - 0.75 N^3.4. Source: Kasten & Czeplak 1980, Solar and terrestrial radiation
/// dependent on the amount and type of cloud, Solar Energy 24. Status: published.
/// Error: std::invalid_argument for a share outside 0 to 1.
double cloud_transmission(double cloud_fraction);

/// Sun on the horizontal at the top of the air, W/m2: 1361/r² cosZ; 0 with the sun down.
/// Source: solar constant of Kopp & Lean 2011. Status: published.
/// Error: std::invalid_argument for a distance that is not positive or as clear_sky_w_m2.
double extraterrestrial_w_m2(double cos_zenith, double distance_au);

/// Share of the global irradiance that is sky light, from the clearness index (global over
/// extraterrestrial, above 1 taken as 1).
///
/// Idealises: hourly means of five US places; its branches meet within 0.0003.
/// Source: Erbs, Klein & Duffie 1982, Estimation of the diffuse radiation fraction for
/// hourly, daily and monthly-average global radiation, Solar Energy 28. Status: published.
/// Error: std::invalid_argument for an index below 0 or not a number.
double diffuse_fraction(double clearness);

/// Sunlight on the open horizontal in its two parts, W/m2.
struct SplitIrradiance {
  double beam_horizontal_w_m2 = 0.0;
  double diffuse_w_m2 = 0.0;
};

/// `global_w_m2` on the horizontal split by Erbs. With the sun under 3.7 deg (cosZ < 0.065)
/// all of it counts as sky light: there the index divides by next to nothing [ours, usual].
/// The beam is never over the sun outside the air: a forecast's mean hour can hold more light
/// than a low sun has [ours].
/// Error: std::invalid_argument for a negative irradiance or as the functions above.
SplitIrradiance split_irradiance(double global_w_m2, double cos_zenith, double distance_au);

}  // namespace slabtide
