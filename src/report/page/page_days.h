#pragma once

#include <string>

#include "slabtide/day/days/planned_days.h"

namespace slabtide {

/// The page of `days`: which day to choose, the days as a table, and what is behind each.
std::string page_days(const PlannedDays& facts);

}  // namespace slabtide
