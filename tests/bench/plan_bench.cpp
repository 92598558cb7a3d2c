#include <benchmark/benchmark.h>

#include <sys/resource.h>

#include <cstddef>
#include <fstream>
#include <iterator>
#include <sstream>
#include <string>
#include <variant>

#include "slabtide/cli/command/run.h"
#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/bands.h"
#include "slabtide/job/reading/read_job.h"
#include "slabtide/weather/forecast/high_low_day.h"

// The demo jobs from end to end, as a user runs them, and how much of that the columns take.

namespace slabtide {
namespace {

constexpr double kib_per_mib = 1024.0;

std::string demo_path(const std::string& name) {
  return std::string(SLABTIDE_SOURCE_DIR "/data/demo/") + name + ".toml";
}

std::string read_text(const std::string& path) {
  std::ifstream file(path);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// The peak memory of the process so far, including all earlier benchmarks.
double peak_mib() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / kib_per_mib;
}

/// `slabtide plan` from the job file to the printed text.
void plan(benchmark::State& state, const std::string& name) {
  const std::string path = demo_path(name);
  for ([[maybe_unused]] auto round : state) {
    std::ostringstream out;
    std::ostringstream err;
    if (run({"plan", path}, out, err) != 0) {
      state.SkipWithError(err.str().c_str());
      break;
    }
    benchmark::DoNotOptimize(out.str().size());
  }
  state.counters["peak_mib"] = peak_mib();
}

struct Prepared {
  Job job;
  WeatherSeries series;
};

Prepared prepare(const std::string& name) {
  Job job = read_job(read_text(demo_path(name))).value.value();
  const auto& typed = std::get<TypedWeather>(job.weather);
  const Forecast forecast = high_low_forecast(typed, job.site, job.pour.date);
  return {std::move(job), WeatherSeries::from_forecast(forecast).value.value()};
}

/// Only exposure and columns, which take almost all of the time.
void pour(benchmark::State& state, const std::string& name) {
  const Prepared prepared = prepare(name);
  const Practice practice = default_practice();
  std::size_t cells = 0;
  std::size_t columns = 0;
  for ([[maybe_unused]] auto round : state) {
    const PourRun result =
        run_pour(prepared.job, prepared.series, practice, SolverSettings{}).value.value();
    cells = 0;
    for (const ZoneRun& zone : result.zones) cells += zone.cells.size();
    columns = result.histories.size();
  }
  state.counters["cells"] = static_cast<double>(cells);
  state.counters["columns"] = static_cast<double>(columns);
  state.counters["per_column"] = benchmark::Counter(
      static_cast<double>(columns),
      benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
}

/// Only the bands: 200 sampled days. The aim is under 3 s on two cores, including the plan.
void bands(benchmark::State& state, const std::string& name) {
  const Prepared prepared = prepare(name);
  const Practice practice = default_practice();
  const PourRun run =
      run_pour(prepared.job, prepared.series, practice, SolverSettings{}).value.value();
  const DayPlan plan = plan_day(prepared.job, run, practice);
  const DayModel model(prepared.job, run, plan, practice, SampleScale{});
  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(with_bands(plan, prepared.job, sample_days(model, {})));
  }
  state.counters["columns"] = static_cast<double>(model.columns());
}

BENCHMARK_CAPTURE(bands, spring, "spring")
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(bands, hot, "hot")
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(plan, spring, "spring")
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(plan, hot, "hot")
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(pour, spring, "spring")
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide
