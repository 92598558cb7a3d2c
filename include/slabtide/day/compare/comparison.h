#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "slabtide/day/compare/choices.h"
#include "slabtide/day/compare/compared_choice.h"
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

/// All choices and which of them is best.
struct Comparison {
  std::vector<ComparedChoice> choices;  ///< as ordered first
  std::vector<LeftOutChoice> left_out;
  std::size_t best = 0;          ///< index into choices
  std::size_t days_sampled = 0;  ///< that every choice was tried on; 0 if there are none

  /// Whether even the best runs into a stop: then the answer is another day.
  bool not_that_day() const { return choices[best].figures.stops > 0; }
};

/// What has no price in the cost of any of the choices, each part once, in the order of CostPart.
std::vector<CostPart> parts_left_out(const Comparison& comparison);

/// Computes every choice. One that is not possible (such as a start before the forecast begins) is
/// left out with the reason.
Comparison compare_choices(const PlannedPour& ordered, const CompareSettings& settings);

}  // namespace slabtide
