#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day as a self-contained HTML page: for a phone, a wide screen and paper, light and dark,
/// with or without the script. Every time and number that is in the plan's JSON has the JSON
/// pointer to it (`data-json`).
std::string page_plan(const PlannedPour& facts);

}  // namespace slabtide
