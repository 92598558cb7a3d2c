#include "slabtide/request/plan/days_request.h"

#include <ostream>
#include <utility>

#include "slabtide/request/plan/load_job.h"

namespace slabtide {

namespace {

/// That the job's weather is one day's figures; nothing if it comes from a forecast.
std::vector<Diagnostic> typed_weather_fault(const JobRequest& request, const Job& job) {
  if (forecast_path(request, job)) return {};
  Diagnostic fault;
  fault.key = "weather";
  fault.message =
      "choosing a day takes a forecast, and the job has only one day's weather typed in";
  fault.next_step =
      "get one with slabtide fetch, and name it with --forecast or as [weather] forecast";
  return {std::move(fault)};
}

}  // namespace

std::optional<PlannedDays> days_request(const JobRequest& request, const Sources& sources,
                                        std::ostream& findings, const DaysSettings& settings) {
  std::optional<LoadedJob> loaded = load_job(request, sources, findings);
  if (!loaded) return std::nullopt;
  const std::vector<Diagnostic> typed = typed_weather_fault(request, loaded->job);
  findings << render_all(typed, loaded->path, loaded->text);
  if (!typed.empty()) return std::nullopt;
  PlannedDays planned{std::move(loaded->job), std::move(loaded->forecast), loaded->practice,
                      loaded->forecast_age_h, loaded->now};
  Parsed<DaysPlan> days = plan_days(
      {planned.job, planned.forecast, planned.practice, planned.now, planned.forecast_age_h},
      settings);
  findings << render_all(days.diagnostics, loaded->path, loaded->text);
  if (!days.ok()) return std::nullopt;
  planned.days = std::move(*days.value);
  return planned;
}

}  // namespace slabtide
