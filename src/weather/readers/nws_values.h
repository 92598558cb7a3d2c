#pragma once

#include <optional>
#include <string_view>

#include "weather_quantity.h"

// How the US National Weather Service writes figures, shared by its two documents.

namespace slabtide {

/// The unit of a code such as "wmoUnit:degC"; older documents say "unit:degC". Empty for a
/// unit no forecast quantity is measured in.
std::optional<WeatherUnit> unit_of_wmo_code(std::string_view code);

struct Measured {
  double value = 0.0;
  WeatherUnit unit = WeatherUnit::percent;
};

/// A wind in words: "5 mph", "5 to 10 mph" (the middle of the range), "0 km/h", "12 kt", "calm".
/// Empty for anything else.
std::optional<Measured> wind_in_words(std::string_view text);

/// What the sky of an hour is told by: the address of its icon and its few words. Either may be
/// empty.
struct SkyTold {
  std::string_view icon;
  std::string_view words;
};

/// Share of the sky covered, from the sky-condition code in the icon's path (skc, few, sct, bkn,
/// ovc), else from the words, else from a code of wet or thick weather, which needs cloud.
/// Shares are the middles of the classes: few 1-2 eighths, sct 3-4, bkn 5-7 (aviation weather
/// reports; status: from memory). Cloud of wet codes: ours.
std::optional<double> cloud_fraction_of(const SkyTold& sky);

/// True where the icon's codes or the words speak of thunder.
bool thunder_of(const SkyTold& sky);

}  // namespace slabtide
