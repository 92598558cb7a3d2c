#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"
#include "slabtide/report/words/text_style.h"

namespace slabtide {

/// A zone's quarter hours as strips, one per part, with the hours above and the crew's time on the
/// part behind; empty if no window opens.
std::string touch_strips(std::size_t zone, const DayPlan& plan, const Job& job,
                         const TextStyle& style);

/// The meaning of the signs in the strips, in one line.
std::string touch_legend();

}  // namespace slabtide
