#pragma once

#include <string>

#include "slabtide/day/days/planned_days.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The day to choose, the days as a table, one row each, and what is behind each verdict.
std::string text_days(const PlannedDays& facts, const TextStyle& style);

}  // namespace slabtide
