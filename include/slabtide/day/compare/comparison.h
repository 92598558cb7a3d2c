#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include "slabtide/day/compare/choice_cost.h"
#include "slabtide/day/compare/choice_figures.h"
#include "slabtide/day/compare/choices.h"
#include "slabtide/weather/forecast/forecast.h"

namespace slabtide {

/// A job with all that its day is computed from, and that day as ordered. The references
/// outlive the comparison.
struct CompareCase {
  const Job& job;
  const Forecast& forecast;
  const WeatherSeries& series;
  const Practice& practice;
  std::optional<double> forecast_age_h;
  const PourRun& run;
  const DayPlan& plan;
  const Ensemble* ensemble = nullptr;  ///< drawn for `plan`; none: that day alone

  std::optional<SampledDays> drawn() const {
    return ensemble == nullptr ? std::nullopt : std::optional(SampledDays{plan, *ensemble});
  }
};

/// How to compute, and whom to tell.
struct CompareSettings {
  int threads = 0;  ///< 0: as many as the machine has; the figures are the same for any
  /// Told after each day computed, from one thread at a time; may be empty.
  std::function<void(std::size_t done)> progress;
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
Comparison compare_choices(const CompareCase& compared, const CompareSettings& settings);

}  // namespace slabtide
