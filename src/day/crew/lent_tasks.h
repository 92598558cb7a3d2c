#pragma once

#include <vector>

#include "slabtide/day/crew/roster.h"

namespace slabtide {

/// Makes tasks that a roster can do. What takes more workers than can do it, or than are there
/// together for long enough, is lent to as many as there are; what nobody is there for long enough
/// may be done at any hours. True if a task was lent to fewer than it needs.
bool lend_to(std::vector<Task>& tasks, const Roster& roster);

}  // namespace slabtide
