#pragma once

#include <utility>

#include "slabtide/day/compare/comparison.h"
#include "slabtide/weather/forecast/high_low_day.h"

namespace slabtide::test {

/// A job of typed weather with its day planned, as `compare` finds it.
class PlannedDay {
 public:
  explicit PlannedDay(Job job)
      : job_(std::move(job)),
        forecast_(
            high_low_forecast(std::get<TypedWeather>(job_.weather), job_.site, job_.pour.date)),
        series_(WeatherSeries::from_forecast(forecast_).value.value()),
        practice_(default_practice()),
        run_(run_pour(job_, series_, practice_, SolverSettings{}).value.value()),
        plan_(plan_day(job_, run_, practice_)) {}

  CompareCase compared() const {
    return {job_, forecast_, series_, practice_, std::nullopt, run_, plan_};
  }
  Choices choices() const { return find_choices(job_, run_, plan_, practice_); }
  ChoiceFigures figures() const { return figures_of(job_, plan_); }

  const Job& job() const { return job_; }
  const PourRun& run() const { return run_; }
  const DayPlan& plan() const { return plan_; }
  const Forecast& forecast() const { return forecast_; }
  const Practice& practice() const { return practice_; }

 private:
  Job job_;
  Forecast forecast_;
  WeatherSeries series_;
  Practice practice_;
  PourRun run_;
  DayPlan plan_;
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
