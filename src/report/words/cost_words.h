#pragma once

#include <string>
#include <vector>

#include "slabtide/day/compare/pour_cost.h"

namespace slabtide {

/// "$4,210 on the likely day: finishers $1,350, concrete $2,860. On average over possible days
/// $4,390, with what lost finishes cost to redo. Left out, no price given: ice."
std::string cost_sentence(const PourCost& cost, const std::string& currency);

/// "$4,210 on the likely day, $4,390 on average over possible days".
std::string cost_in_short(const PourCost& cost, const std::string& currency);

/// " Left out, no price given: ice, blankets."; empty where nothing is.
std::string left_out_sentence(const std::vector<CostPart>& parts);

}  // namespace slabtide
