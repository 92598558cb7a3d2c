#pragma once

#include <doctest/doctest.h>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/weather/forecast/high_low_day.h"
#include "slabtide/weather/site/weather_series.h"

// Plans a job made in a test, through the library, with the built-in practice.

namespace slabtide::test {

struct Planned {
  PourRun run;
  DayPlan plan;
};

inline WeatherSeries series_of(const Job& job) {
  const Forecast forecast =
      high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  auto reading = WeatherSeries::from_forecast(forecast);
  REQUIRE(reading.ok());
  return *reading.value;
}

inline Planned plan_of(const Job& job, const WeatherSeries& series,
                       const SolverSettings& settings = {}) {
  const Practice practice = default_practice();
  auto run = run_pour(job, series, practice, settings);
  INFO(render_all(run.diagnostics, "job", {}));
  REQUIRE(run.ok());
  DayPlan plan = plan_day(job, *run.value, practice);
  return {std::move(*run.value), std::move(plan)};
}

inline Planned plan_of(const Job& job, const SolverSettings& settings = {}) {
  return plan_of(job, series_of(job), settings);
}

/// The saws' windows of a zone left in one piece; the plan has those of its cuts, if it has any.
inline std::vector<SawPlan> uncut_saws(const Job& job, const Planned& planned,
                                       std::size_t zone = 0) {
  return plan_zone(job.zones[zone], planned.run.zones[zone], job, planned.run, default_practice())
      .saws;
}

/// Minutes from the start of the pour to an instant; fails the test if there is no instant.
inline double minutes_in(const Job& job, const std::optional<UtcTime>& time) {
  REQUIRE(time);
  return seconds_between(job.pour.start, *time) / 60.0;
}

inline const OperationWindow& window_of(const PartPlan& part, Operation operation) {
  const OperationWindow* window = part.window(operation);
  REQUIRE(window != nullptr);
  return *window;
}

}  // namespace slabtide::test
