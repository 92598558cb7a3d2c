#pragma once

#include <optional>
#include <vector>

#include "slabtide/core/civil_time.h"

namespace slabtide {

/// An uncertain time. On one in ten of the sampled days it is before `early`, on half of them
/// before `likely`, on one in ten after `late`. A time is absent if on that many days it never
/// happens, or not before the forecast ends.
struct TimeBand {
  std::optional<UtcTime> early;
  std::optional<UtcTime> likely;
  std::optional<UtcTime> late;
  double fraction = 1.0;  ///< of the days, on which it happens at all
};

/// From early to late in minutes; empty if either is missing.
std::optional<double> band_minutes(const TimeBand& band);

/// A value with its weight; an absent value is one that never happens.
struct Weighted {
  std::optional<double> value;
  double weight = 0.0;
};

/// The value below which `fraction` of the weight is, interpolated linearly; empty if that is among
/// values that never happen, or if all weights are 0.
std::optional<double> weighted_quantile(std::vector<Weighted> values, double fraction);

/// The fraction of the weight for which the value happens at all; 0 if all weights are 0.
double fraction_that_comes(const std::vector<Weighted>& values);

}  // namespace slabtide
