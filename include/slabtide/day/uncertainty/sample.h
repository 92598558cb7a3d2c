#pragma once

#include <string>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/spread_rules.h"
#include "slabtide/day/practice/uncertain_inputs.h"
#include "slabtide/slab/mix/mix_errors.h"
#include "slabtide/weather/forecast/forecast.h"
#include "slabtide/weather/site/weather_errors.h"

namespace slabtide {

/// One day that may come, in physical terms.
struct Sample {
  WeatherErrors weather;
  MixErrors mix;
  double convection_factor = 1.0;
  double evaporation_factor = 1.0;
  double absorptance_offset = 0.0;
  double delay_s = 0.0;      ///< of batching and placing; negative: earlier
  double pace_factor = 1.0;  ///< on the time that placing takes
};

/// What the spreads depend on besides the practice.
struct SampleScale {
  bool set_times_estimated = true;
  /// Where the mix book knows the mix: as LearnedSet::log_deviation. Batches differ besides as
  /// those of a supplier do; no wider than without the book.
  std::optional<double> learned_log_deviation = std::nullopt;
  double lead_at_start_h = 0.0;  ///< from the forecast's issue to the run's first instant
};
SampleScale sample_scale(const PourRun& run, const Forecast& forecast, const SpreadRules& spread);

/// The day that these uncertain inputs make. What comes in factors is spread in its logarithm; late
/// and early have halves of different width.
Sample sample_of(const UncertainInputs& uncertain_inputs, const SpreadRules& spread,
                 const SampleScale& scale);

}  // namespace slabtide
