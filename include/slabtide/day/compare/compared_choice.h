#pragma once

#include <optional>

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/compare/choice_cost.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/compare/pour_cost.h"
#include "slabtide/day/practice/compare_rules.h"

namespace slabtide {

/// A choice and its results.
struct ComparedChoice {
  Choice choice;
  ChoiceFigures figures;
  ChoiceCost cost;
  std::optional<PourCost> money = std::nullopt;  ///< of the whole pour; empty without prices
};

/// True if `a` is preferable: fewer stops, the worst loss first; then less of all that is trouble
/// together: minutes late on average over the sampled days and on a bad day (both in steps of
/// CompareRules::worth_min, with CompareRules::dark_late_fraction of the minutes in the dark), the
/// change itself, and what its cautions weigh (`Stakes::caution_cost`). So a needless change never
/// wins, nor one that takes more than it saves. Where all that is equal, less money over the
/// sampled days, or on the likely day without them.
bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules);

}  // namespace slabtide
