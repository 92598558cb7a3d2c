#pragma once

#include <optional>
#include <string_view>

// Places as a phone's map gives them: "29.95, -90.07", "29.95° N, 90.07° W", 29°57'00"N 90°04'12"W.

namespace slabtide {

/// A point on the earth, degrees; north and east positive.
struct LatLon {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
};

/// An angle in degrees, or in degrees, minutes and seconds, with a sign or with its side of the
/// earth before or after it: "90.07° W", "-90.07", "W 90 4 12". Empty for anything else, or if the
/// side is none of `sides` ("NS" or "EW"), the first of which is positive.
std::optional<double> parse_angle_deg(std::string_view text, std::string_view sides);

/// Latitude and longitude, the latitude first unless their sides say otherwise. Empty for anything
/// else, or beyond 90 and 180 degrees.
std::optional<LatLon> parse_place(std::string_view text);

}  // namespace slabtide
