#pragma once

#include <optional>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/windows/frost_risk.h"

namespace slabtide {

/// Hours in a row with rain worth a word.
struct RainSpell {
  UtcTime from;
  UtcTime to;
  double chance = 0.0;  ///< 0 to 1, of its rainiest hour; 0 if the forecast gives only amounts
};

/// The rain forecast for a span of time.
struct RainRisk {
  std::optional<RainSpell> first;  ///< the first spell that WeatherLimits name; empty if none is
  double chance = 0.0;             ///< 0 to 1, of the rainiest hour of the span
  double amount_mm = 0.0;          ///< over the whole span

  /// 0 to 1: that a fresh top is rained on. Rain in a forecast without chances counts as certain.
  double wets_chance() const { return first && chance == 0.0 ? 1.0 : chance; }
  /// True if rain comes on one day in three (`lost_too_often_fraction`), or is given without a
  /// chance: fresh concrete under it is taken to be lost.
  bool too_often() const;
};

/// The rain between two instants, as far as the run's weather reaches.
RainRisk rain_between(const PourRun& run, UtcTime from, UtcTime to, const WeatherLimits& limits);

}  // namespace slabtide
