#pragma once

#include <optional>
#include <string_view>

#include "weather_quantity.h"

// Formats of the US National Weather Service that its two documents share.

namespace slabtide {

/// The unit of a code such as "wmoUnit:degC"; older documents write "unit:degC". Empty for a unit
/// that no forecast quantity has.
std::optional<WeatherUnit> unit_of_wmo_code(std::string_view code);

struct Measured {
  double value = 0.0;
  WeatherUnit unit = WeatherUnit::percent;
};

/// A wind in words: "5 mph", "5 to 10 mph" (the middle of the range), "0 km/h", "12 kt", "calm".
/// Empty for anything else.
std::optional<Measured> wind_in_words(std::string_view text);

/// What describes the sky of an hour: the address of its icon and a short text. Either may be
/// empty.
struct SkyTold {
  std::string_view icon;
  std::string_view words;
};

/// Fraction of the sky covered, from the sky-condition code in the icon's path (skc, few, sct, bkn,
/// ovc), else from the words, else from a code of wet or thick weather, which implies cloud. The
/// fractions are the middles of the classes: few 1-2 eighths, sct 3-4, bkn 5-7 (aviation weather
/// reports; status: from memory). Cloud of wet codes: ours.
std::optional<double> cloud_fraction_of(const SkyTold& sky);

/// True if the icon's codes or the words mention thunder.
bool thunder_of(const SkyTold& sky);

}  // namespace slabtide
