#pragma once

#include <optional>
#include <vector>

#include "slabtide/day/plan/day_plan.h"

namespace slabtide {

/// Adds to a plan's cautions, in their order, what only the sampled days show: a finish lost and a
/// frost too often. `lost_chances` as of LateDays.
void add_drawn_cautions(std::vector<Caution>& cautions, const Job& job, const DayPlan& plan,
                        const std::vector<std::optional<double>>& lost_chances,
                        const FrostDays& frost);

}  // namespace slabtide
