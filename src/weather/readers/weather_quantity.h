#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "job/model/limits.h"

namespace slabtide {

/// What a forecast gives for an hour. The values are indices of DraftHour::values.
enum class WeatherQuantity {
  air,
  dew_point,
  humidity,
  wind,
  gust,
  cloud,
  solar,
  rain,
  rain_chance
};
inline constexpr std::size_t weather_quantity_count = 9;

/// The units forecasts are written in.
enum class WeatherUnit {
  celsius,
  fahrenheit,
  percent,
  m_s,
  km_h,
  mph,
  knots,
  w_m2,
  mm,
  inch,
  metre
};

/// The usual name: "air temperature", "dew point".
std::string_view name_of(WeatherQuantity quantity);
/// The unit as written after a number: "°F", "%", "mph".
std::string_view symbol_of(WeatherUnit unit);

/// Converts to °C, m/s, W/m2 or mm, and percent to a fraction.
double si_from(double value, WeatherUnit unit);
double si_to(double si_value, WeatherUnit unit);
/// True if the quantity can be given in this unit.
bool measures(WeatherUnit unit, WeatherQuantity quantity);

/// Why no weather on earth has this value ("humidity of 140 % is impossible, expected 1 to 100 %"),
/// with the bounds in the unit the value was written in; empty if the value is possible. A value
/// that is not finite is impossible.
std::optional<std::string> impossible(WeatherQuantity quantity, double value, WeatherUnit unit);

/// The possible values of the quantity, in SI.
Range possible_si(WeatherQuantity quantity);

}  // namespace slabtide
