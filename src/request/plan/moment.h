#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/time_zone.h"

// A point in time as a user types it, for the option --now.

namespace slabtide {

/// The instant that the option gives, on this zone's clock if it has no offset; empty if the text
/// is not a time in a year that can be planned.
std::optional<UtcTime> read_moment(std::string_view text, const TimeZone& zone);

/// The message when `read_moment` returns nothing.
std::string moment_fault(std::string_view text);

}  // namespace slabtide
