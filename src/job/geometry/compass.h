#pragma once

#include <optional>
#include <string_view>

namespace slabtide {

inline constexpr double full_turn_deg = 360.0;

/// Degrees clockwise from north for words such as "north", "south west", "southwest" or "sw" in
/// lower case; empty for any other word.
std::optional<double> compass_deg(std::string_view word);

}  // namespace slabtide
