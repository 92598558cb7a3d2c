#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "job/model/limits.h"

namespace slabtide {

/// What a forecast says of an hour. The values are indices of DraftHour::values.
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

/// The trade's word: "air temperature", "dew point".
std::string_view name_of(WeatherQuantity quantity);
/// As it is written after a figure: "°F", "%", "mph".
std::string_view symbol_of(WeatherUnit unit);

/// °C, m/s, W/m2, mm; percent becomes a share of one.
double si_from(double value, WeatherUnit unit);
double si_to(double si_value, WeatherUnit unit);
/// True where the quantity is ever written in the unit: no wind in degrees.
bool measures(WeatherUnit unit, WeatherQuantity quantity);

/// Why no weather on earth has this value ("humidity of 140 % is impossible, expected 1 to
/// 100 %"), the bounds told in the unit it was written in; empty where some has. A value
/// that is not finite is impossible.
std::optional<std::string> impossible(WeatherQuantity quantity, double value, WeatherUnit unit);

/// What some weather on earth has, in SI.
Range possible_si(WeatherQuantity quantity);

}  // namespace slabtide
