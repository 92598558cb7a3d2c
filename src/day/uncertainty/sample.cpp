#include "slabtide/day/uncertainty/sample.h"

#include <algorithm>
#include <cmath>

#include "day/practice/one_in_ten.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// The offset for `z` standard deviations if one value in ten is off by more than `spread`.
double offset(double z, double spread) { return z * spread / one_in_ten_z; }
double log_factor(double z, double fraction) { return offset(z, std::log1p(fraction)); }
double factor(double z, double fraction) { return std::exp(log_factor(z, fraction)); }

WeatherErrors weather_errors(const UncertainInputs& u, const SpreadRules& spread, double lead_h) {
  return {.air_k = offset(u.of(UncertainInput::air), spread.air_k),
          .dew_point_k = offset(u.of(UncertainInput::dew_point), spread.dew_point_k),
          .wind_log = log_factor(u.of(UncertainInput::wind), spread.wind_fraction),
          .cloud_fraction = offset(u.of(UncertainInput::cloud), spread.cloud_fraction),
          .lead_at_start_h = lead_h,
          .growth_per_h = 1.0 / spread.forecast_doubles_in_h};
}

/// Standard deviation of the mix's set times, in their logarithm.
double set_log_deviation(const SpreadRules& spread, const SampleScale& scale) {
  const double of_batch = std::log1p(spread.set_supplier_fraction) / one_in_ten_z;
  const double of_mix = std::log1p(spread.set_estimated_fraction) / one_in_ten_z;
  const double usual = scale.set_times_estimated ? of_mix : of_batch;
  if (!scale.learned_log_deviation) return usual;
  return std::min(usual, std::hypot(of_batch, *scale.learned_log_deviation));
}

MixErrors mix_errors(const UncertainInputs& u, const SpreadRules& spread,
                     const SampleScale& scale) {
  return {.discharge_k = offset(u.of(UncertainInput::concrete), spread.concrete_k),
          .set_time_factor =
              std::exp(u.of(UncertainInput::set_time) * set_log_deviation(spread, scale)),
          .set_span_factor = factor(u.of(UncertainInput::set_span), spread.set_span_fraction),
          .activation_energy_factor =
              factor(u.of(UncertainInput::activation_energy), spread.activation_energy_fraction),
          .admixture_factor = factor(u.of(UncertainInput::admixture), spread.admixture_fraction),
          .bleed_factor = factor(u.of(UncertainInput::bleed), spread.bleed_fraction)};
}

}  // namespace

SampleScale sample_scale(const PourRun& run, const Forecast& forecast, const SpreadRules& spread) {
  SampleScale scale;
  scale.set_times_estimated = run.mixes.front().setting.estimated;
  scale.learned_log_deviation = run.mixes.front().learned_log_deviation;
  scale.lead_at_start_h =
      forecast.issued ? std::max(0.0, seconds_between(*forecast.issued, run.weather.grid.start) /
                                          seconds_per_hour)
                      : spread.unknown_age_h;
  return scale;
}

Sample sample_of(const UncertainInputs& uncertain_inputs, const SpreadRules& spread,
                 const SampleScale& scale) {
  const double delay = uncertain_inputs.of(UncertainInput::delay);
  const double delay_min = delay > 0.0 ? spread.late_min : spread.early_min;
  Sample sample;
  sample.weather = weather_errors(uncertain_inputs, spread, scale.lead_at_start_h);
  sample.mix = mix_errors(uncertain_inputs, spread, scale);
  sample.convection_factor =
      factor(uncertain_inputs.of(UncertainInput::convection), spread.convection_fraction);
  sample.evaporation_factor =
      factor(uncertain_inputs.of(UncertainInput::evaporation), spread.evaporation_fraction);
  sample.absorptance_offset =
      offset(uncertain_inputs.of(UncertainInput::absorptance), spread.absorptance);
  sample.delay_s = offset(delay, delay_min) * seconds_per_minute;
  sample.pace_factor = factor(uncertain_inputs.of(UncertainInput::pace), spread.pace_fraction);
  return sample;
}

}  // namespace slabtide
