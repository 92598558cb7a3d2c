#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/compare/pour_cost.h"
#include "slabtide/day/plan/stakes.h"
#include "slabtide/day/plan/verdict.h"
#include "slabtide/day/plan/weather_risk.h"
#include "slabtide/day/plan/weather_summary.h"

namespace slabtide {

/// A start tried on a day, and whether to pour then.
struct TriedStart {
  UtcTime at;
  Verdict verdict = Verdict::good;
};

/// A day at its best start.
struct ForecastDay {
  Date date;
  UtcTime start;          ///< the first concrete leaves the chute
  UtcTime first_batched;  ///< the first load, at the plant
  UtcTime call_off_by;    ///< until then the plant takes a change (DaysRules::call_off_h)
  Judgement judged;
  Stakes stakes;                     ///< with each hand beyond the job's crew counted as money
  std::vector<Caution> cautions;     ///< stops and cautions, in order of time
  int finishers = 0;                 ///< of the plan: the job's, or more where they are late
  std::optional<int> smallest_crew;  ///< that is never late; empty if none is
  double late_min = 0.0;             ///< of the finishing crew, in all
  WeatherSummary weather;
  UtcTime set;               ///< when all of it has set, or the weather ends
  RainRisk rain_before_set;  ///< from the first placing: such rain loses the slab
  RainRisk rain_after_set;   ///< until DaysRules::reach_h after the start: it does no harm
  FrostRisk frost;           ///< on concrete too weak for it
  /// The share of the days drawn on which it freezes so; empty if none were drawn.
  std::optional<double> frost_fraction;
  std::size_t days_drawn = 0;  ///< days that may come, drawn for this start
  /// The share of them on which work that makes the finish is lost; empty if none were drawn.
  std::optional<double> finish_lost_fraction;
  std::optional<PourCost> cost;    ///< of the pour at that start; empty if its job tells no prices
  std::vector<TriedStart> starts;  ///< all that were tried, by the clock

  /// 0 to 1: that rain, frost or lost work spoils the day, taken as independent (ours).
  double loss_chance() const;
};

}  // namespace slabtide
