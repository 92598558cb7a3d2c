#pragma once

namespace slabtide {

/// A day described by its high and low. Hours count from any common origin.
struct HighLowSpan {
  double rise_h = 0.0;       ///< sunrise
  double set_h = 0.0;        ///< sunset
  double next_rise_h = 0.0;  ///< sunrise of the next day
  double low_c = 0.0;        ///< of the morning
  double high_c = 0.0;
  double next_low_c = 0.0;  ///< of the next morning
};

/// When the low occurs: sunrise + c, ten minutes before sunrise.
double low_hour(double rise_h);
/// When the high occurs: half the day's length + a after the low, if that is before sunset.
double high_hour(const HighLowSpan& span);

/// Air temperature 1.5 m above the ground, from one low to the next.
///
/// Idealises: a clear day without fronts. The daytime sine ends at sunset; from there the
/// temperature falls exponentially and, with the correction below, meets the next low at the next
/// sunrise + c. Symbols: m hours since the low, D day length, Z night length, n hours since sunset,
/// N = Z + c hours from sunset to the next low, a 1.86 h, b 2.20, c -0.17 h:
///
///     day    T = Tn + (Tx - Tn) sin(pi m / (D + 2a))
///     night  T = d + (Tset - d) exp(-b n / Z),  d = (Tn' - Tset e)/(1 - e),  e = exp(-b N / Z)
///
/// Source: Parton & Logan 1981, A model for diurnal variation in soil and air temperature, Agric.
/// Meteorol. 23, coefficients for air at 1.5 m. Status: published. Departure: d replaces the next
/// low, so that the curve reaches that low and does not jump at dawn [ours].
/// Error: std::invalid_argument for an hour outside [low, next low], a day or night length that is
/// not positive or a temperature that is not finite.
double high_low_air_c(const HighLowSpan& span, double hour);

}  // namespace slabtide
