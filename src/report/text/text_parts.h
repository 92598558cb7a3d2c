#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

// Parts that the terminal's texts share.

namespace slabtide {

/// Place, date, weather and mix.
std::string text_opening(const PlannedPour& facts, const TextStyle& style);
/// What was assumed.
std::string text_assumptions(const PlannedPour& facts, const TextStyle& style);
/// A saw's window.
std::string saw_sentence(const SawPlan& saw, const std::string& zone_name, const Job& job);

}  // namespace slabtide
