#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The plan as JSON, schema 1: times ISO 8601 with offset to the minute, quantities SI with the
/// unit in the key; null for a time that does not happen. Ends in a newline.
std::string json_plan(const PlannedPour& facts);

}  // namespace slabtide
