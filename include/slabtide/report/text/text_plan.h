#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The day for a terminal, 80 columns: what to do first, then why. Ends in a newline.
std::string text_plan(const PlannedPour& facts, const TextStyle& style);

}  // namespace slabtide
