#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// On how many days in a hundred a task is late; empty where that is not known, or on none.
std::optional<int> days_missed(const CrewPlan& crew, std::size_t task);

/// Who does what and when, for a terminal, 80 columns: the crew and what it misses, each one's day,
/// how to work through each zone, what to take along. Ends in a newline.
std::string text_crew(const PlannedPour& facts, const TextStyle& style);

/// The day of one of the crew, by name, to be sent as a message: no columns, a line for each task.
/// Empty if nobody is called so.
std::string text_hand(const PlannedPour& facts, const std::string& name, const TextStyle& style);

/// The crew in two or three lines, for a plan's headline; empty if nobody is needed.
std::string crew_headline(const PlannedPour& facts, const TextStyle& style);

/// "4 finishers: 23 min late in all; 5 miss nothing".
std::string crew_size_words(const CrewPlan& crew);

}  // namespace slabtide
