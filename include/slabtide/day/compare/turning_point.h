#pragma once

#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/crossing.h"

namespace slabtide {

/// How a warmer or cooler day would change the answer.
struct TurningPoint {
  /// By the shift of the day, K: whether the best choice beats the job as ordered; or, if the job
  /// as ordered is the best, whether it is late or has a stop.
  Crossing by_shift_k;
  double high_c = 0.0;      ///< of the pour day's forecast as it is
  double concrete_c = 0.0;  ///< at discharge, as it is
};

/// The job on a day warmer by `shift_k`: concrete, air, dew point and a given ground temperature
/// are all shifted.
struct ShiftedDay {
  Job job;
  Forecast forecast;
};
ShiftedDay shift_day(const Job& job, const Forecast& forecast, double shift_k);

/// Finds the turning points by computing the best choice and the job as ordered on days up to
/// CompareRules::search_k warmer and cooler, to about half a kelvin (1 °F). None are looked for
/// where even the best choice runs into a stop: the answer is another day, whatever its weather.
TurningPoint find_turning_point(const PlannedPour& ordered, const Comparison& comparison,
                                const CompareSettings& settings);

}  // namespace slabtide
