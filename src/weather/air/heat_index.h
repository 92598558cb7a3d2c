#pragma once

namespace slabtide {

/// The heat index: what hot, moist air feels like in the shade, °C.
///
/// Idealises: a person at light work in the shade and a light wind; full sun adds up to 8 °C
/// (15 °F), heavy work is not in it.
/// Symbols: T, air in °F; R, relative humidity in percent. From 80 °F on the regression in both
/// (Rothfusz) with its two adjustments for dry and for moist air; under that the mean of T and the
/// simple form by Steadman. Range: air of 0 to 55 °C; below 80 °F it is hardly more than the air.
/// Source: Rothfusz 1990, The Heat Index Equation, NWS Southern Region SR 90-23, as the Weather
/// Prediction Center gives it. Status: from memory.
/// Error: std::invalid_argument for a humidity outside 0 to 1, or if not finite.
double heat_index_c(double air_c, double humidity_fraction);

}  // namespace slabtide
