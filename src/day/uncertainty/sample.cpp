#include "slabtide/day/uncertainty/sample.h"

#include <algorithm>
#include <cmath>

#include "day/practice/one_in_ten.h"
#include "slab/process/strength.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// The offset for `z` standard deviations if one value in ten is off by more than `spread`.
double offset(double z, double spread) { return z * spread / one_in_ten_z; }
double log_factor(double z, double fraction) { return offset(z, std::log1p(fraction)); }
double factor(double z, double fraction) { return std::exp(log_factor(z, fraction)); }

/// The deviations of two independent causes together.
double joint(double fraction_a, double fraction_b) {
  return std::hypot(std::log1p(fraction_a), std::log1p(fraction_b)) / one_in_ten_z;
}

/// Of the night's air, beside the error that it has of the day's.
double night_air_k(const UncertainInputs& u, const SpreadRules& spread) {
  constexpr double with_day = 0.5;
  static const double by_itself = std::sqrt(1.0 - with_day * with_day);
  const double z =
      with_day * u.of(UncertainInput::air) + by_itself * u.of(UncertainInput::night_air);
  return offset(z, spread.night_air_k) - offset(u.of(UncertainInput::air), spread.air_k);
}

WeatherErrors weather_errors(const UncertainInputs& u, const SpreadRules& spread,
                             const SampleScale& scale) {
  const double ratio = scale.wind_ratio_measured ? 0.0 : spread.wind_ratio_fraction;
  return {.air_k = offset(u.of(UncertainInput::air), spread.air_k),
          .night_air_k = night_air_k(u, spread),
          .dew_point_k = offset(u.of(UncertainInput::dew_point), spread.dew_point_k),
          .wind_log = log_factor(u.of(UncertainInput::wind), spread.wind_fraction),
          .cloud_fraction = offset(u.of(UncertainInput::cloud), spread.cloud_fraction),
          .wind_ratio_log = log_factor(u.of(UncertainInput::wind_ratio), ratio),
          .lead_at_start_h = scale.lead_at_start_h,
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
  const double expansion = scale.aggregate_unknown ? spread.aggregate_expansion_fraction : 0.0;
  return {
      .discharge_k = offset(u.of(UncertainInput::concrete), spread.concrete_k),
      .set_time_factor =
          std::exp(u.of(UncertainInput::set_time) * set_log_deviation(spread, scale)),
      .set_span_factor = factor(u.of(UncertainInput::set_span), spread.set_span_fraction),
      .activation_energy_factor =
          factor(u.of(UncertainInput::activation_energy), spread.activation_energy_fraction),
      .admixture_factor = factor(u.of(UncertainInput::admixture), spread.admixture_fraction),
      .bleed_factor = factor(u.of(UncertainInput::bleed), spread.bleed_fraction),
      .strength_factor = std::exp(u.of(UncertainInput::strength) *
                                  joint(spread.strength_fraction, scale.strength_margin_fraction)),
      .expansion_factor = factor(u.of(UncertainInput::aggregate), expansion)};
}

PracticeErrors practice_errors(const UncertainInputs& u, const SpreadRules& spread,
                               const SampleScale& scale) {
  const double aggregate = scale.aggregate_unknown ? spread.aggregate_saw_fraction : 0.0;
  return {.ready_factor = factor(u.of(UncertainInput::ready), spread.ready_fraction),
          .too_stiff_factor = factor(u.of(UncertainInput::too_stiff), spread.too_stiff_fraction),
          .saw_strength_factor =
              factor(u.of(UncertainInput::saw_strength), spread.saw_strength_fraction) *
              factor(u.of(UncertainInput::aggregate), aggregate),
          .stress_factor = factor(u.of(UncertainInput::stress), spread.stress_fraction)};
}

}  // namespace

Practice with_errors(Practice practice, const PracticeErrors& errors) {
  constexpr double still_a_window = 1.01;
  for (ResistanceWindow& window : practice.windows) {
    window.opens_psi *= errors.ready_factor;
    window.closes_psi =
        std::max(window.closes_psi * errors.too_stiff_factor, window.opens_psi * still_a_window);
  }
  SawRules& saw = practice.saw;
  for (double* strength_psi :
       {&saw.early_entry_opens_psi, &saw.wet_opens_soft_psi, &saw.wet_opens_medium_psi,
        &saw.wet_opens_hard_psi, &saw.wet_opens_quartzite_psi}) {
    *strength_psi *= errors.saw_strength_factor;
  }
  saw.cut_by_ratio /= errors.stress_factor;
  saw.late_ratio /= errors.stress_factor;
  return practice;
}

SampleScale sample_scale(const Job& job, const PourRun& run, const Forecast& forecast,
                         const SpreadRules& spread) {
  SampleScale scale;
  scale.set_times_estimated = run.mixes.front().setting.estimated;
  scale.learned_log_deviation = run.mixes.front().learned_log_deviation;
  scale.lead_at_start_h =
      forecast.issued ? std::max(0.0, seconds_between(*forecast.issued, run.weather.grid.start) /
                                          seconds_per_hour)
                      : spread.unknown_age_h;
  scale.wind_ratio_measured = job.site.measured_wind_ratio.has_value();
  scale.ground_measured = job.site.ground_c.has_value();
  scale.aggregate_unknown = job.mix.aggregate == Aggregate::unknown;
  if (!job.mix.strength_margin_psi) {
    scale.strength_margin_fraction =
        spread.strength_margin_psi / (job.mix.specified_strength_psi +
                                      usual_strength_margin_psi(job.mix.specified_strength_psi));
  }
  return scale;
}

Sample sample_of(const UncertainInputs& uncertain_inputs, const SpreadRules& spread,
                 const SampleScale& scale) {
  const double delay = uncertain_inputs.of(UncertainInput::delay);
  const double delay_min = delay > 0.0 ? spread.late_min : spread.early_min;
  Sample sample;
  sample.weather = weather_errors(uncertain_inputs, spread, scale);
  sample.mix = mix_errors(uncertain_inputs, spread, scale);
  sample.convection_factor =
      factor(uncertain_inputs.of(UncertainInput::convection), spread.convection_fraction);
  sample.evaporation_factor =
      factor(uncertain_inputs.of(UncertainInput::evaporation), spread.evaporation_fraction);
  sample.absorptance_offset =
      offset(uncertain_inputs.of(UncertainInput::absorptance), spread.absorptance);
  sample.practice = practice_errors(uncertain_inputs, spread, scale);
  sample.bleed_time_factor =
      factor(uncertain_inputs.of(UncertainInput::bleed_time), spread.bleed_time_fraction);
  sample.base_k = offset(uncertain_inputs.of(UncertainInput::base),
                         scale.ground_measured ? spread.base_measured_k : spread.base_k);
  sample.delay_s = offset(delay, delay_min) * seconds_per_minute;
  sample.pace_factor = factor(uncertain_inputs.of(UncertainInput::pace), spread.pace_fraction);
  return sample;
}

}  // namespace slabtide
