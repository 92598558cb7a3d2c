#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// The day for a terminal, 80 columns: what to do first, then why. Ends in a newline.
std::string text_plan(const PlannedPour& facts, const TextStyle& style);

/// Its parts, for other texts: place, date, weather and mix; what was assumed; a saw's window.
std::string text_opening(const PlannedPour& facts, const TextStyle& style);
std::string text_assumptions(const PlannedPour& facts, const TextStyle& style);
std::string saw_sentence(const SawPlan& saw, const std::string& zone_name, const Job& job);

}  // namespace slabtide
