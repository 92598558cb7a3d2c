#pragma once

#include <string>

#include "slabtide/day/plan/verdict.h"

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

// Parts that several terminal texts share.

namespace slabtide {

/// The place and date, when the plan was made, and from which forecast.
std::string text_title(const PlannedPour& facts, const TextStyle& style);
/// The same, with weather and mix.
std::string text_opening(const PlannedPour& facts, const TextStyle& style);
/// The assumptions that were made.
std::string text_assumptions(const PlannedPour& facts, const TextStyle& style);
/// A saw's window.
std::string saw_sentence(const SawPlan& saw, const std::string& zone_name, const Job& job);

/// "Pour with care: short window, dew.": whether to pour, and why, the worst first.
std::string verdict_line(const Judgement& judged, const TextStyle& style);

}  // namespace slabtide
