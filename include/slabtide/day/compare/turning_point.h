#pragma once

#include "slabtide/day/compare/comparison.h"
#include "slabtide/day/compare/crossing.h"

namespace slabtide {

/// What a warmer or a cooler day would do to the answer.
struct TurningPoint {
  /// Over the shift of the day, K: whether the best choice beats the job as ordered; or,
  /// where that is the best, whether it runs late or into a stop.
  Crossing by_shift_k;
  double high_c = 0.0;      ///< of the pour day's forecast as it stands
  double concrete_c = 0.0;  ///< at discharge, as it stands
};

/// The job on a day warmer by `shift_k`: concrete, air, dew point and a ground temperature
/// that was given all go along.
struct ShiftedDay {
  Job job;
  Forecast forecast;
};
ShiftedDay shift_day(const Job& job, const Forecast& forecast, double shift_k);

/// Solves for it by computing the best choice and the job as ordered on days up to
/// CompareRules::search_k warmer and cooler, to half a kelvin (1 °F).
TurningPoint find_turning_point(const PlannedPour& ordered, const Comparison& comparison,
                                const CompareSettings& settings);

}  // namespace slabtide
