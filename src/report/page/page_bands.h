#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// The day as bands: time across, a lane a zone part and operation, its sun and shade, its saws
/// and forms, then trucks and crew. Ready markup; the times are on the page as tables too.
std::string page_bands(const PlannedPour& facts);

}  // namespace slabtide
