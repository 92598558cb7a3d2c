#pragma once

#include <string>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/practice/uncertain_inputs.h"
#include "slabtide/slab/mix/mix_errors.h"
#include "slabtide/weather/forecast/forecast.h"
#include "slabtide/weather/site/weather_errors.h"

namespace slabtide {

/// How far the crew, its saw and the slab differ from what the practice says of them.
struct PracticeErrors {
  double ready_factor = 1.0;         ///< on the resistances at which windows open
  double too_stiff_factor = 1.0;     ///< and close
  double saw_strength_factor = 1.0;  ///< on the strength that a saw waits for
  double stress_factor = 1.0;        ///< on stress over tensile strength
};

/// The practice with these errors. A window that would close before it opens has only its opening.
/// Status: ours.
Practice with_errors(Practice practice, const PracticeErrors& errors);

/// One possible day, in physical quantities.
struct Sample {
  WeatherErrors weather;
  MixErrors mix;
  PracticeErrors practice;
  double convection_factor = 1.0;
  double evaporation_factor = 1.0;
  double absorptance_offset = 0.0;
  double bleed_time_factor = 1.0;
  double base_k = 0.0;       ///< warmer than planned is the base, at its top
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
  bool wind_ratio_measured = false;
  bool ground_measured = false;
  bool aggregate_unknown = true;
  /// Spread of the margin of strength over f'c, as a fraction of the mean; 0 if the job says it.
  double strength_margin_fraction = 0.0;
};
SampleScale sample_scale(const Job& job, const PourRun& run, const Forecast& forecast,
                         const SpreadRules& spread);

/// The day for these uncertain inputs. Factors are spread in their logarithm; lateness has
/// different spreads for late and early; the night's air is half as wrong as the day's by the same
/// cause, and otherwise for itself (ours).
Sample sample_of(const UncertainInputs& uncertain_inputs, const SpreadRules& spread,
                 const SampleScale& scale);

}  // namespace slabtide
