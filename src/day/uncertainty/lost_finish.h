#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/plan/caution.h"

namespace slabtide {

/// That a finish is lost too often (`lost_too_often_fraction`), of the task that it is likeliest
/// with; empty where none is, or the likely day loses one. `lost_chances` as of LateDays.
std::optional<Caution> lost_finish(const CrewPlan& crew,
                                   const std::vector<std::optional<double>>& lost_chances);

}  // namespace slabtide
