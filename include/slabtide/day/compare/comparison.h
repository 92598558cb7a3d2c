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

/// How to compute, and whom to tell.
struct CompareSettings {
  int threads = 0;  ///< 0: as many as the machine has; the figures are the same for any
  /// Told after each day computed, from one thread at a time; may be empty.
  std::function<void(std::size_t done)> progress = {};
  /// Days that may come, drawn for the pour's plan; none: its day as planned alone. Outlives the
  /// comparison.
  const Ensemble* ensemble = nullptr;

  /// The days that may come, which were drawn for `plan`.
  std::optional<SampledDays> days_for(const DayPlan& plan) const {
    return ensemble == nullptr ? std::nullopt : std::optional(SampledDays{plan, *ensemble});
  }
};

/// A choice and what comes of it.
struct ComparedChoice {
  Choice choice;
  ChoiceFigures figures;
  ChoiceCost cost;
};

/// All choices, and the one to prefer.
struct Comparison {
  std::vector<ComparedChoice> choices;  ///< as ordered first
  std::vector<LeftOutChoice> left_out;
  std::size_t best = 0;          ///< index into choices
  std::size_t days_sampled = 0;  ///< that may come, which every choice was tried on; 0: none
};

/// True where `a` is to be preferred: fewer stops, then fewer minutes late over the days that may
/// come and then on the bad day (both in steps of CompareRules::worth_min), then less disturbance,
/// so that a needless change never wins.
bool better(const ComparedChoice& a, const ComparedChoice& b, const CompareRules& rules);

/// Computes every choice; one that cannot be (it starts before the forecast does) is left out
/// with the reason.
Comparison compare_choices(const PlannedPour& ordered, const CompareSettings& settings);

}  // namespace slabtide
