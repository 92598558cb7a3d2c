#pragma once

#include <optional>

#include "slabtide/core/diagnostic.h"
#include "slabtide/day/pour/order.h"
#include "slabtide/job/model/job.h"
#include "slabtide/weather/site/site_weather.h"
#include "slabtide/weather/site/weather_series.h"

// When a pour is placed, and the weather needed for it.

namespace slabtide {

/// From the first batching to the last placing.
struct PlacingSpan {
  UtcTime first_batched;
  UtcTime last_placed;
};

PlacingSpan placing_span(const OrderPlan& order);

/// Until then the plant takes a change: DaysRules::call_off_h before the first load is batched.
UtcTime call_off_by(UtcTime first_batched, const DaysRules& rules);

/// The local day's first instant.
UtcTime midnight_before(UtcTime time, const TimeZone& zone);

/// Why the pour cannot be computed: placing lasts over a day, or the weather does not cover it.
std::optional<Diagnostic> span_fault(const Job& job, const PlacingSpan& span,
                                     const WeatherSeries& series);

/// Cells placed within the same two minutes share a column (ours: under a minute of error).
inline constexpr double placing_round_s = 120.0;

/// The instants for which the pour is computed, as far as the forecast reaches.
TimeGrid grid_for(const Job& job, const PlacingSpan& span, UtcTime forecast_end, double until_h);
/// Whether the grid ends before the requested horizon.
bool is_cut_short(const TimeGrid& grid, double until_h);

/// The ground temperature: the user's value, else the mean air temperature of the day before and of
/// the pour day, as far as the weather data reaches.
double ground_temperature_c(const Job& job, const WeatherSeries& series);

/// Gives a mix of which nobody told it (`Mix::temperature_is_assumed`) a temperature at discharge:
/// 2 K (4 F) over the mean air of the pour's day, since drum and cement warm it, but 15.6 C (60 F)
/// at least, to which plants heat their water in the cold (ours).
void assume_concrete_temperature(Job& job, const WeatherSeries& series);

/// "4 °F over the day's mean, 60 °F at least": what it is then.
std::string assumed_concrete_words(UnitSystem units);

}  // namespace slabtide
