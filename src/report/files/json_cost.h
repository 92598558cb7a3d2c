#pragma once

#include <optional>

#include "json_values.h"
#include "slabtide/day/compare/pour_cost.h"

namespace slabtide {

/// What a pour costs, in the job's currency; null without prices.
Json json_cost(const std::optional<PourCost>& cost, const Job& job);

}  // namespace slabtide
