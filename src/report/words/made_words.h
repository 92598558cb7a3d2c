#pragma once

#include <string>

#include "slabtide/day/days/planned_days.h"
#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// When a report was made, and from which forecast: "Made Wed, May 13, 2026, 6:00 PM. Forecast:
/// hourly table, issued Wed, May 13, 2026, 4:00 PM, 2 h old." What is not known is not said.
std::string made_words(const PlannedPour& facts);
std::string made_words(const PlannedDays& facts);

}  // namespace slabtide
