#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day as one HTML page that stands by itself: for a phone, a wide screen and paper, light
/// and dark, with or without script. Every time and number that is in the plan's JSON carries
/// the JSON pointer to it (`data-json`).
std::string page_plan(const PlannedPour& facts);

}  // namespace slabtide
