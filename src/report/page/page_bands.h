#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day as bands over time: a lane for each zone part and operation, with sun and shade, then
/// saws and forms, then trucks and crew. Returns markup; the page gives the same times as tables
/// too.
std::string page_bands(const PlannedPour& facts);

}  // namespace slabtide
