#pragma once

#include <cstddef>
#include <string>

#include "slabtide/day/crew/crew_plan.h"

namespace slabtide {

/// "2, Ann": the others on a task, unnamed finishers by their number; empty for one who is alone.
std::string others_words(const CrewPlan& crew, std::size_t task, std::size_t me);

}  // namespace slabtide
