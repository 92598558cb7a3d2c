#pragma once

#include <string>

#include "slabtide/day/days/planned_days.h"

namespace slabtide {

/// The days of a forecast as JSON; described by data/days.schema.json.
std::string json_days(const PlannedDays& facts);

}  // namespace slabtide
