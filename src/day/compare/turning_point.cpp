#include "slabtide/day/compare/turning_point.h"

#include <algorithm>
#include <mutex>

#include "day/joints/cut_memo.h"
#include "day/pour/pour_memo.h"
#include "job/model/limits.h"
#include "slab/mix/mix_temperature.h"
#include "weather/readers/weather_quantity.h"

namespace slabtide {

namespace {

constexpr double width_k = 1.0 / 1.8;  ///< 1 °F
/// About one every 5 °F over the usual 25 °F either way: an odd number, so that the day as it is is
/// one of them.
constexpr int points = 11;

/// Shifts a value, if it is known, within the range that can be planned.
void shift(std::optional<double>& value_c, double shift_k, const Range& within) {
  if (value_c) value_c = std::clamp(*value_c + shift_k, within.low, within.high);
}

double high_of_day_c(const Job& job, const Forecast& forecast) {
  std::optional<double> high;
  for (const ForecastHour& hour : forecast.hours) {
    const bool that_day = job.site.time_zone.local_from_utc(hour.at).date() == job.pour.date;
    if (that_day && hour.air_c && (!high || *hour.air_c > *high)) high = hour.air_c;
  }
  return high.value_or(discharge_temperature_c(job.mix));
}

/// Computes two choices on a warmer or cooler day.
class ShiftedDays {
 public:
  ShiftedDays(const PlannedPour& ordered, const Comparison& comparison,
              const CompareSettings& settings)
      : ordered_(ordered),
        comparison_(comparison),
        settings_(settings),
        memo_(ordered.job.obstacles, SiteLight::Keep::all),
        cuts_(ordered.plan.cuts.joints) {}

  /// Whether the best choice beats the job as ordered. If the job as ordered is the best: whether
  /// it is late by enough to matter, or has a stop.
  bool turned(double shift_k) {
    const ComparedChoice& first = comparison_.choices.front();
    const ComparedChoice& chosen = comparison_.choices[comparison_.best];
    const ShiftedDay day = shift_day(first.choice.job, ordered_.forecast, shift_k);
    const Parsed<PourRun> run = run_on(day);
    tell();
    if (!run.ok()) return false;
    const ComparedChoice plain = compared(first, day.job, *run.value);
    const CompareRules& rules = ordered_.practice.compare;
    if (comparison_.best == 0) {
      return plain.figures.stops > 0 || plain.figures.expected_late_min > rules.worth_min;
    }
    const ShiftedDay other = shift_day(chosen.choice.job, ordered_.forecast, shift_k);
    const bool same_pour = pour_signature(chosen.choice.job) == pour_signature(first.choice.job);
    const Parsed<PourRun> solved = same_pour ? Parsed<PourRun>{} : run_on(other);
    tell();
    if (!same_pour && !solved.ok()) return false;
    return better(compared(chosen, other.job, same_pour ? *run.value : *solved.value), plain,
                  rules);
  }

 private:
  Parsed<PourRun> run_on(const ShiftedDay& day) {
    const Parsed<WeatherSeries> series = WeatherSeries::from_forecast(day.forecast);
    SolverSettings solver;
    solver.threads = 1;  // the days are computed in parallel
    return run_pour(day.job, *series.value, ordered_.practice, solver, {max_cells_of_many, &memo_});
  }

  ComparedChoice compared(const ComparedChoice& choice, const Job& job, const PourRun& run) {
    // Choices are ranked by stops and lateness, for which the job's own crew is enough.
    const PlanScope scope{CrewDepth::own_crew, &cuts_};
    const DayPlan plan = plan_day(job, run, ordered_.practice, ordered_.forecast_age_h, scope);
    ComparedChoice result;
    result.figures = figures_of(job, plan, settings_.days_for(ordered_.plan));
    result.cost = choice.cost;
    return result;
  }

  void tell() {
    if (!settings_.progress) return;
    const std::lock_guard<std::mutex> lock(mutex_);
    settings_.progress(comparison_.choices.size() + ++done_);
  }

  const PlannedPour& ordered_;
  const Comparison& comparison_;
  const CompareSettings& settings_;
  PourMemo memo_;
  CutMemo cuts_;
  std::mutex mutex_;
  std::size_t done_ = 0;
};

}  // namespace

ShiftedDay shift_day(const Job& job, const Forecast& forecast, double shift_k) {
  const Range air_c = possible_si(WeatherQuantity::air);
  ShiftedDay day{job, forecast};
  for (ForecastHour& hour : day.forecast.hours) {
    shift(hour.air_c, shift_k, air_c);
    shift(hour.dew_point_c, shift_k, air_c);
  }
  shift(day.job.site.ground_c, shift_k, limits::ground_c);
  std::optional<double> concrete_c = discharge_temperature_c(job.mix);
  shift(concrete_c, shift_k, limits::discharges_c);
  day.job.mix.temperature = *concrete_c;
  return day;
}

TurningPoint find_turning_point(const PlannedPour& ordered, const Comparison& comparison,
                                const CompareSettings& settings) {
  ShiftedDays days(ordered, comparison, settings);
  const double range_k = ordered.practice.compare.search_k;
  TurningPoint turning;
  turning.high_c = high_of_day_c(ordered.job, ordered.forecast);
  turning.concrete_c = discharge_temperature_c(ordered.job.mix);
  if (comparison.not_that_day()) return turning;
  turning.by_shift_k = find_crossing([&days](double shift_k) { return days.turned(shift_k); },
                                     -range_k, range_k, points, width_k, settings.threads);
  return turning;
}

}  // namespace slabtide
