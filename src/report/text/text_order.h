#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// What to order and when the trucks arrive, 80 columns.
std::string text_order(const PlannedPour& facts, const TextStyle& style);

}  // namespace slabtide
