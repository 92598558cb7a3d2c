#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cli/line/command_line.h"

// The option --place LAT,LON, which several commands take.

namespace slabtide {

/// A point on the earth, degrees; north and east positive.
struct Place {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
};

/// The option's row in a command's table.
Option place_option();

/// Reads "44.9,-91.9"; empty if the text is not two numbers, or not a possible place.
std::optional<Place> read_place(std::string_view text);

/// The message when `read_place` returns nothing.
std::string place_fault(std::string_view text);

/// A message if the place is far from the United States but would be there with the other sign of
/// the longitude; else empty. This is a guess, so it is used for a warning only.
std::string sign_doubt(const Place& place);

/// `what` as a warning of `slabtide COMMAND` about the option.
std::string place_warning(std::string_view command, std::string_view what);

}  // namespace slabtide
