#include <benchmark/benchmark.h>

#include <fstream>
#include <iterator>
#include <string>
#include <utility>
#include <variant>

#include "report/files/json_plan.h"
#include "report/page/page_plan.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/forecast/high_low_day.h"

// What writing a plan adds to computing it: under 0.3 s for the page of a demo job.

namespace slabtide {
namespace {

PlannedPour demo_day(const std::string& name) {
  std::ifstream file(SLABTIDE_SOURCE_DIR "/data/demo/" + name + ".toml");
  Job job = read_job(std::string(std::istreambuf_iterator<char>(file), {})).value.value();
  const auto& typed = std::get<TypedWeather>(job.weather);
  Forecast forecast = high_low_forecast(typed, job.site, job.pour.date);
  const WeatherSeries series = WeatherSeries::from_forecast(forecast).value.value();
  const Practice practice = default_practice();
  PourRun run = run_pour(job, series, practice, SolverSettings{}).value.value();
  DayPlan plan = plan_day(job, run, practice);
  return {std::move(job), std::move(forecast), practice, std::move(run), std::move(plan)};
}

void write(benchmark::State& state, const std::string& name,
           std::string (*made)(const PlannedPour&)) {
  const PlannedPour day = demo_day(name);
  std::size_t bytes = 0;
  for ([[maybe_unused]] auto round : state) {
    const std::string text = made(day);
    bytes = text.size();
    benchmark::DoNotOptimize(bytes);
  }
  state.counters["kB"] = static_cast<double>(bytes) / 1000.0;
}

BENCHMARK_CAPTURE(write, page_spring, "spring", page_plan)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(write, page_hot, "hot", page_plan)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(write, json_spring, "spring", json_plan)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide
