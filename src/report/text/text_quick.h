#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// A plan without a site plan: each zone (sun and shade) is a column of one table.
std::string text_quick(const PlannedPour& facts, const TextStyle& style);

}  // namespace slabtide
