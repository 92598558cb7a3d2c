#pragma once

#include <optional>
#include <vector>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// A time that is not known for sure. Of the days that may come, one in ten has it before
/// `early`, half have it before `likely`, one in ten after `late`. A time is absent where so
/// many of the days never have it, or not before the forecast ends.
struct TimeBand {
  std::optional<UtcTime> early;
  std::optional<UtcTime> likely;
  std::optional<UtcTime> late;
  double fraction = 1.0;  ///< of the days, on which it comes at all
};

/// From early to late in minutes; empty where either is missing.
std::optional<double> band_minutes(const TimeBand& band);

/// A value and what it counts for; an absent value is one that never comes.
struct Weighted {
  std::optional<double> value;
  double weight = 0.0;
};

/// The value below which `fraction` of the weight lies, straight between neighbours; empty where
/// it falls among those that never come, or all weights are 0.
std::optional<double> weighted_quantile(std::vector<Weighted> values, double fraction);

/// The share of the weight that comes at all; 0 where all weights are 0.
double fraction_that_comes(const std::vector<Weighted>& values);

}  // namespace slabtide
