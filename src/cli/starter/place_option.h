#pragma once

#include <string>
#include <string_view>

#include "cli/line/command_line.h"
#include "core/typed_place.h"

// The option --place LAT,LON, which several commands take.

namespace slabtide {

/// The option's row in a command's table.
Option place_option();

/// The message when `parse_place` returns nothing.
std::string place_fault(std::string_view text);

/// A message if the place is far from the United States but would be there with the other sign of
/// the longitude; else empty. This is a guess, so it is used for a warning only.
std::string sign_doubt(const LatLon& place);

/// `what` as a warning of `slabtide COMMAND` about the option.
std::string place_warning(std::string_view command, std::string_view what);

}  // namespace slabtide
