#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "slabtide/day/compare/choice_cost.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/compare/choices.h"
#include "slabtide/day/plan/planned_pour.h"

namespace slabtide {

/// How to compute a comparison, and how to report progress.
struct CompareSettings {
  int threads = 0;  ///< 0: as many as the machine has; the figures are the same for any number
  /// Called after each day computed, by one thread at a time; may be empty.
  std::function<void(std::size_t done)> progress = {};
  /// Days sampled for the pour's plan. If null, only the planned day is used. Must outlive the
  /// comparison.
  const Ensemble* ensemble = nullptr;

  /// The sampled days, which were sampled for `plan`.
  std::optional<SampledDays> days_for(const DayPlan& plan) const {
    return ensemble == nullptr ? std::nullopt : std::optional(SampledDays{plan, *ensemble});
  }
};

/// A choice and its results.
struct ComparedChoice {
  Choice choice;
  ChoiceFigures figures;
  ChoiceCost cost;
};

/// All choices and which of them is best.
struct Comparison {
  std::vector<ComparedChoice> choices;  ///< as ordered first
  std::vector<LeftOutChoice> left_out;
  std::size_t best = 0;          ///< index into choices
  std::size_t days_sampled = 0;  ///< that every choice was tried on; 0 if there are none

  /// Whether even the best runs into a stop: then the answer is another day.
  bool not_that_day() const { return choices[best].figures.stops > 0; }
};

/// True if `a` is preferable: fewer stops, the worst loss first, then fewer minutes late on average
/// over the sampled days, then fewer on a bad day (both in steps of CompareRules::worth_min), then
/// less of disturbance and what its cautions weigh (`Stakes::caution_cost`) together, so that a
/// needless change never wins.
bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules);

/// Computes every choice. One that is not possible (such as a start before the forecast begins) is
/// left out with the reason.
Comparison compare_choices(const PlannedPour& ordered, const CompareSettings& settings);

}  // namespace slabtide
