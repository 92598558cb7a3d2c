#pragma once

#include <string>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/spread_rules.h"
#include "slabtide/day/practice/uncertain_inputs.h"
#include "slabtide/slab/mix/mix_errors.h"
#include "slabtide/weather/forecast/forecast.h"
#include "slabtide/weather/site/weather_errors.h"

namespace slabtide {

/// One possible day, in physical quantities.
struct Sample {
  WeatherErrors weather;
  MixErrors mix;
  double convection_factor = 1.0;
  double evaporation_factor = 1.0;
  double absorptance_offset = 0.0;
  double delay_s = 0.0;      ///< of batching and placing; negative means earlier
  double pace_factor = 1.0;  ///< multiplies the time that placing takes
};

/// What the spreads depend on besides the practice.
struct SampleScale {
  bool set_times_estimated = true;
  /// LearnedSet::log_deviation, if the mix book has the mix. Differences between batches are added
  /// as for a supplier's figures; the total is no wider than without the book.
  std::optional<double> learned_log_deviation = std::nullopt;
  double lead_at_start_h = 0.0;  ///< from the forecast's issue to the first instant of the run
};
SampleScale sample_scale(const PourRun& run, const Forecast& forecast, const SpreadRules& spread);

/// The day for these uncertain inputs. Factors are spread in their logarithm; lateness has
/// different spreads for late and early.
Sample sample_of(const UncertainInputs& uncertain_inputs, const SpreadRules& spread,
                 const SampleScale& scale);

}  // namespace slabtide
