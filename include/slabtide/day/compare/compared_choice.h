#pragma once

#include "slabtide/day/compare/choice.h"
#include "slabtide/day/compare/choice_cost.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/practice/compare_rules.h"

namespace slabtide {

/// A choice and its results.
struct ComparedChoice {
  Choice choice;
  ChoiceFigures figures;
  ChoiceCost cost;
};

/// True if `a` is preferable: fewer stops, the worst loss first, then fewer minutes late on average
/// over the sampled days, then fewer on a bad day (both in steps of CompareRules::worth_min), then
/// less of disturbance and what its cautions weigh (`Stakes::caution_cost`) together, so that a
/// needless change never wins.
bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules);

}  // namespace slabtide
