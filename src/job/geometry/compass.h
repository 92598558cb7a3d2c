#pragma once

#include <optional>
#include <string_view>

namespace slabtide {

inline constexpr double full_turn_deg = 360.0;

/// Degrees clockwise from north of "north", "south west", "southwest", "sw" and so on, in
/// lower case; empty for other words.
std::optional<double> compass_deg(std::string_view word);

}  // namespace slabtide
