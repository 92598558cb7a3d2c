#pragma once

#include <string>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/report/words/text_style.h"

// Somebody's day, line by line.

namespace slabtide {

/// A line of somebody's day: from when to when, and what.
struct DayLine {
  std::string span;
  std::string words;
};

/// The tasks and waits of one stay.
std::vector<DayLine> lines_of(const CrewPlan& crew, const CrewVisit& visit, std::size_t who,
                              const Job& job);

/// The same for a terminal, in two columns.
std::string visit_lines(const CrewPlan& crew, const CrewVisit& visit, std::size_t who,
                        const Job& job, const TextStyle& style);

}  // namespace slabtide
