#pragma once

#include <optional>
#include <string_view>

namespace slabtide {

inline constexpr double full_turn_deg = 360.0;

/// Degrees clockwise from north for words such as "north", "south west", "southwest" or "sw" in
/// lower case; empty for any other word.
std::optional<double> compass_deg(std::string_view word);

/// The nearest of the eight, "north" to "northwest".
std::string_view compass_word(double bearing_deg);

}  // namespace slabtide
