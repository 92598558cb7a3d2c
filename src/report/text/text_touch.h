#pragma once

#include <string>

#include "slabtide/report/words/plan_facts.h"

namespace slabtide {

/// A zone's quarter hours as strips, one a part, with the hours above and the crew's time on
/// it behind; empty where no window opens.
std::string touch_strips(const ZonePlan& zone, const CrewPlan& crew, const Job& job);

/// What the signs of the strips mean, on a line.
std::string touch_legend();

}  // namespace slabtide
