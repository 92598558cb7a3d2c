#pragma once

#include <string>

#include "slabtide/report/words/check_back_facts.h"

namespace slabtide {

/// What was noted beside what was planned as JSON, schema 1, by the hour of the reading: times
/// ISO 8601 with offset to the minute, quantities SI with the unit in the key; what the plan says
/// nothing of is null. Ends in a newline.
std::string json_check_back(const CheckBackFacts& facts);

}  // namespace slabtide
