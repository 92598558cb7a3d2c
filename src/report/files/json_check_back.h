#pragma once

#include <string>

#include "slabtide/report/words/check_back_facts.h"

namespace slabtide {

/// What was noted and what was planned, as JSON, schema 1, in order of time: times ISO 8601 with
/// offset to the minute, quantities SI with the unit in the key; null where the plan says nothing.
/// Ends in a newline.
std::string json_check_back(const CheckBackFacts& facts);

}  // namespace slabtide
