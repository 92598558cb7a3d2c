#include "pour_span.h"

#include <algorithm>
#include <cmath>
#include <variant>

#include <fmt/format.h>

#include "job/model/limits.h"
#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/job/model/job_clock.h"

namespace slabtide {

namespace {

constexpr double grid_step_s = 300.0;
// Of concrete whose temperature nobody told.
constexpr double over_air_k = 2.0;
constexpr double heated_to_c = 15.6;
const Duration day_long = boost::posix_time::hours(24);

/// Placing lasts over a day, because of its rate or a zone's own time; the computed time would end
/// before the concrete has set.
std::optional<Diagnostic> placing_fault(const Job& job, UtcTime last_placed) {
  constexpr double max_placing_h = 24.0;  // ours
  const double placing_h = seconds_between(job.pour.start, last_placed) / seconds_per_hour;
  if (placing_h <= max_placing_h) return std::nullopt;
  Diagnostic fault;
  fault.key = "pour";
  fault.message = fmt::format(
      "the last concrete is placed {}, {:.0f} h after the start; expected at "
      "most {:.0f} h",
      clock_of(job).date_time(last_placed), placing_h, max_placing_h);
  fault.next_step =
      "give it more hands (placing_crew), or plan each day's pour in a job file of its own";
  return fault;
}

std::optional<Diagnostic> coverage_fault(const Job& job, const WeatherSeries& series,
                                         const PlacingSpan& span) {
  const auto [first_batched, last_placed] = span;
  const Clock clock = clock_of(job);
  Diagnostic fault;
  fault.key = "weather";
  std::string forecast = "the forecast";
  if (const auto* file = std::get_if<ForecastFile>(&job.weather)) {
    fault.where = file->where;
    forecast += " in " + file->path;
  }
  // Concrete needs at least a step of the grid, plus the rounding of its placing time, to be
  // computed.
  const double min_s = grid_step_s + placing_round_s;
  if (seconds_between(last_placed, series.last()) < min_s) {
    fault.message = fmt::format(
        "{} ends {}, {} the last concrete is placed {}", forecast, clock.date_time(series.last()),
        series.last() < last_placed ? "before" : "as", clock.date_time(last_placed));
    fault.next_step = "get a newer forecast, or correct the date of the pour";
    return fault;
  }
  if (series.first() > first_batched) {
    fault.message = fmt::format("{} starts {}, after the first load is batched {}", forecast,
                                clock.date_time(series.first()), clock.date_time(first_batched));
    fault.next_step = "use a forecast that starts earlier, or correct the date of the pour";
    return fault;
  }
  return std::nullopt;
}

}  // namespace

UtcTime midnight_before(UtcTime time, const TimeZone& zone) {
  return zone.utc_from_local(LocalTime(zone.local_from_utc(time).date())).utc;
}

PlacingSpan placing_span(const OrderPlan& order) {
  PlacingSpan span{order.loads.front().batched, order.loads.front().empty};
  for (const Load& load : order.loads) {
    span.first_batched = std::min(span.first_batched, load.batched);
    span.last_placed = std::max(span.last_placed, load.empty);
  }
  return span;
}

UtcTime call_off_by(UtcTime first_batched, const DaysRules& rules) {
  return after_seconds(first_batched, -rules.call_off_h * seconds_per_hour);
}

std::string assumed_concrete_words(UnitSystem units) {
  return fmt::format("{} over the day's mean, {} at least",
                     temperature_difference_words(over_air_k, units),
                     temperature_words(heated_to_c, units));
}

std::optional<Diagnostic> span_fault(const Job& job, const PlacingSpan& span,
                                     const WeatherSeries& series) {
  auto fault = placing_fault(job, span.last_placed);
  return fault ? fault : coverage_fault(job, series, span);
}

TimeGrid grid_for(const Job& job, const PlacingSpan& span, UtcTime forecast_end, double until_h) {
  const double transit_s = job.pour.transit_min * seconds_per_minute;
  TimeGrid grid;
  grid.step_s = grid_step_s;
  grid.start = span.first_batched;
  const double wanted_s = transit_s + until_h * seconds_per_hour;
  const double end_s = std::min(wanted_s, seconds_between(grid.start, forecast_end));
  grid.count = static_cast<std::size_t>(std::floor(end_s / grid_step_s)) + 1;
  return grid;
}

bool is_cut_short(const TimeGrid& grid, double until_h) {
  return grid.end_s() + grid_step_s < until_h * seconds_per_hour;
}

double ground_temperature_c(const Job& job, const WeatherSeries& series) {
  if (job.site.ground_c) return *job.site.ground_c;
  const UtcTime today = midnight_before(job.pour.start, job.site.time_zone);
  return series.mean_air_c(std::max(series.first(), today - day_long),
                           std::min(series.last(), today + day_long));
}

void assume_concrete_temperature(Job& job, const WeatherSeries& series) {
  if (!job.mix.temperature_is_assumed) return;
  const UtcTime today = midnight_before(job.pour.start, job.site.time_zone);
  const double air_c = series.mean_air_c(today, today + day_long);
  job.mix.temperature = std::clamp(air_c + over_air_k, heated_to_c, limits::discharges_c.high);
}

}  // namespace slabtide
