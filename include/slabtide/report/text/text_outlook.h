#pragma once

#include <string>

#include "slabtide/day/plan/outlook.h"
#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The day at a glance: the verdict, the hours as a table with bars, the findings.
std::string text_outlook(const PlannedPour& facts, const Outlook& outlook, const TextStyle& style);

}  // namespace slabtide
