#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cli/line/command_line.h"

// The option --place LAT,LON, which more than one command takes.

namespace slabtide {

/// A point on the earth, degrees; north and east positive.
struct Place {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
};

/// The option's row in a command's table.
Option place_option();

/// "44.9,-91.9"; empty where the text is no such pair, or off the earth.
std::optional<Place> read_place(std::string_view text);

/// What to say where `read_place` gives nothing.
std::string place_fault(std::string_view text);

/// That the place is far from where the other sign would put it, in the United States; empty
/// where that is not so. A guess, which only a warning can be made of.
std::string sign_doubt(const Place& place);

/// The warning of `slabtide command`.
std::string place_warning(std::string_view command, std::string_view what);

}  // namespace slabtide
