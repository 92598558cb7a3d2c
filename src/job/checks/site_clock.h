#pragma once

#include <string>
#include <string_view>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// A message saying that the clock of the site's time zone is far from solar time at its longitude;
/// empty if it is not. A longitude that lacks its minus sign puts the sun on the other side of the
/// day.
std::string clock_off_sun(const Site& site);

/// A message saying that "EST" or "MST" never goes forward, which the clocks of most people who say
/// so do; empty for any other zone.
std::string clock_without_summer(const Site& site);

/// What the user should do about a longitude without its sign.
inline constexpr std::string_view west_is_negative = "Longitudes west of Greenwich are negative";

}  // namespace slabtide
