#include "slabtide/day/uncertainty/draw.h"

#include <algorithm>
#include <cmath>

#include "day/practice/one_in_ten.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// What `z` deviations come to where one in ten is `spread` off.
double offset(double z, double spread) { return z * spread / one_in_ten_z; }
double log_factor(double z, double share) { return offset(z, std::log1p(share)); }
double factor(double z, double share) { return std::exp(log_factor(z, share)); }

WeatherErrors weather_errors(const Unknowns& u, const SpreadRules& spread, double lead_h) {
  return {.air_k = offset(u.of(Unknown::air), spread.air_k),
          .dew_point_k = offset(u.of(Unknown::dew_point), spread.dew_point_k),
          .wind_log = log_factor(u.of(Unknown::wind), spread.wind_share),
          .cloud_share = offset(u.of(Unknown::cloud), spread.cloud_share),
          .lead_at_start_h = lead_h,
          .growth_per_h = 1.0 / spread.forecast_doubles_in_h};
}

/// Standard deviation of the mix's set times, in their logarithm.
double set_log_deviation(const SpreadRules& spread, const DrawScale& scale) {
  const double of_batch = std::log1p(spread.set_supplier_share) / one_in_ten_z;
  const double of_mix = std::log1p(spread.set_estimated_share) / one_in_ten_z;
  const double usual = scale.set_times_estimated ? of_mix : of_batch;
  if (!scale.learned_log_deviation) return usual;
  return std::min(usual, std::hypot(of_batch, *scale.learned_log_deviation));
}

MixErrors mix_errors(const Unknowns& u, const SpreadRules& spread, const DrawScale& scale) {
  return {.discharge_k = offset(u.of(Unknown::concrete), spread.concrete_k),
          .set_time_factor = std::exp(u.of(Unknown::set_time) * set_log_deviation(spread, scale)),
          .set_span_factor = factor(u.of(Unknown::set_span), spread.set_span_share),
          .set_energy_factor = factor(u.of(Unknown::set_energy), spread.set_energy_share),
          .admixture_factor = factor(u.of(Unknown::admixture), spread.admixture_share),
          .bleed_factor = factor(u.of(Unknown::bleed), spread.bleed_share)};
}

}  // namespace

DrawScale draw_scale(const PourRun& run, const Forecast& forecast, const SpreadRules& spread) {
  DrawScale scale;
  scale.set_times_estimated = run.mixes.front().setting.estimated;
  scale.learned_log_deviation = run.mixes.front().learned_log_deviation;
  scale.lead_at_start_h =
      forecast.issued ? std::max(0.0, seconds_between(*forecast.issued, run.weather.grid.start) /
                                          seconds_per_hour)
                      : spread.unknown_age_h;
  return scale;
}

Draw draw_of(const Unknowns& unknowns, const SpreadRules& spread, const DrawScale& scale) {
  const double delay = unknowns.of(Unknown::delay);
  const double delay_min = delay > 0.0 ? spread.late_min : spread.early_min;
  Draw draw;
  draw.weather = weather_errors(unknowns, spread, scale.lead_at_start_h);
  draw.mix = mix_errors(unknowns, spread, scale);
  draw.convection_factor = factor(unknowns.of(Unknown::convection), spread.convection_share);
  draw.evaporation_factor = factor(unknowns.of(Unknown::evaporation), spread.evaporation_share);
  draw.absorptance_offset = offset(unknowns.of(Unknown::absorptance), spread.absorptance);
  draw.delay_s = offset(delay, delay_min) * seconds_per_minute;
  draw.pace_factor = factor(unknowns.of(Unknown::pace), spread.pace_share);
  return draw;
}

}  // namespace slabtide
