#pragma once

#include <string>
#include <string_view>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// That the clock of the site's time zone is far off the sun at its longitude, in words; empty
/// where it is not. A longitude without its minus puts the sun on the other side of the day.
std::string clock_off_sun(const Site& site);

/// What to do about it.
inline constexpr std::string_view west_is_negative = "Longitudes west of Greenwich are negative";

}  // namespace slabtide
