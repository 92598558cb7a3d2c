#pragma once

#include <utility>

#include "slabtide/day/compare/comparison.h"
#include "slabtide/weather/forecast/high_low_day.h"

namespace slabtide::test {

/// A job with typed weather, and its planned day.
class PlannedDay {
 public:
  explicit PlannedDay(Job job) : PlannedDay(job, forecast_of(job)) {}
  PlannedDay(Job job, Forecast forecast) : pour_(planned(std::move(job), std::move(forecast))) {}

  static Forecast forecast_of(const Job& job) {
    return high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  }

  const PlannedPour& pour() const { return pour_; }
  Choices choices() const { return find_choices(pour_, figures()); }
  ChoiceFigures figures() const { return figures_of(pour_.job, pour_.plan); }

  const Job& job() const { return pour_.job; }
  const PourRun& run() const { return pour_.run; }
  const DayPlan& plan() const { return pour_.plan; }
  const Forecast& forecast() const { return pour_.forecast; }
  const Practice& practice() const { return pour_.practice; }

 private:
  static PlannedPour planned(Job job, Forecast forecast) {
    const WeatherSeries series = WeatherSeries::from_forecast(forecast).value.value();
    Practice practice = with_labels(default_practice(), job.finish_work);
    PourRun run = run_pour(job, series, practice, SolverSettings{}).value.value();
    DayPlan plan = plan_day(job, run, practice);
    return {std::move(job), std::move(forecast), std::move(practice), std::move(run),
            std::move(plan)};
  }

  PlannedPour pour_;
};

inline const Choice* choice_named(const Choices& choices, const std::string& label) {
  for (const Choice& choice : choices.tried) {
    if (choice.label == label) return &choice;
  }
  return nullptr;
}

inline std::string why_left_out(const std::vector<LeftOutChoice>& left_out,
                                const std::string& label) {
  for (const LeftOutChoice& one : left_out) {
    if (one.label == label) return one.why;
  }
  return "not left out";
}

}  // namespace slabtide::test
