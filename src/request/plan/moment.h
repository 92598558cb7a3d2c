#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "slabtide/core/time_zone.h"

// A moment as a user types it: the option --now.

namespace slabtide {

/// The moment that the option names, on this zone's clock where it gives no offset; empty where
/// the text is no time of a year that is planned.
std::optional<UtcTime> read_moment(std::string_view text, const TimeZone& zone);

/// What to say where `read_moment` gives nothing.
std::string moment_fault(std::string_view text);

}  // namespace slabtide
