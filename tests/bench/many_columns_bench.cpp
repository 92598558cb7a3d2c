#include <benchmark/benchmark.h>

#include <sys/resource.h>

#include <cstddef>
#include <vector>

#include "bench_columns.h"
#include "core/parallel.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/day/practice/uncertain_inputs.h"
#include "slabtide/day/uncertainty/column_events.h"
#include "slabtide/day/uncertainty/sampled_pour.h"

// A large pour on many sampled days, and how the time per column depends on their number. These run
// first in the program, so that the peak of memory is theirs.

namespace slabtide::bench {
namespace {

constexpr double kib_per_mib = 1024.0;

double peak_mib() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) / kib_per_mib;
}

/// `count` columns, each with its own light, 40 h from the first placing to the end.
ColumnSet pour_of(std::size_t count) {
  ColumnSet set;
  set.weather = two_days(48.0);
  set.exposures = exposures(set.weather, count);
  set.mixes = {usual_mix()};
  for (std::size_t i = 0; i < count; ++i) {
    PouredColumn poured;
    poured.column = placed_at_eight(set.mixes[0], set.exposures[i]);
    poured.exposure = i;
    set.columns.push_back(poured);
  }
  set.start_s = set.columns.front().column.placed_s;
  return set;
}

ColumnQuestions all_questions() {
  ColumnQuestions asked;
  asked.operations = operations_of(Finish::stamp);
  asked.next_day = true;
  asked.cracks = StressCase{.uncut_length_m = 6.0, .thickness_m = 0.1};
  return asked;
}

/// The events of every column on every day, as an ensemble needs them.
std::vector<std::vector<ColumnEvents>> all_days(const ColumnSet& set, std::size_t days) {
  const Practice practice = default_practice();
  const ColumnQuestions asked = all_questions();
  const std::vector<UncertainInputs> uncertain_inputs = even_uncertain_inputs(days);
  SolverSettings solver;
  solver.threads = 1;
  std::vector<std::vector<ColumnEvents>> events(days);
  in_parallel(days, 0, [&](std::size_t day) {
    events[day].resize(set.columns.size());
    visit_sampled(set, sample_of(uncertain_inputs[day], practice.spread, SampleScale{}), solver,
                  [&](std::size_t i, const ColumnHistory& history, const MixModel& mix,
                      const SiteWeather& weather) {
                    events[day][i] = events_of(history, mix, asked, weather, practice);
                  });
  });
  return events;
}

/// Arguments: cells and days. The aim for 300 by 100 is 2 s on two cores and 256 MiB.
void cells_by_days(benchmark::State& state) {
  const ColumnSet set = pour_of(static_cast<std::size_t>(state.range(0)));
  const auto days = static_cast<std::size_t>(state.range(1));
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(all_days(set, days));
  const auto columns = static_cast<double>(state.range(0) * state.range(1));
  state.counters["per_column"] = benchmark::Counter(
      columns, benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
  state.counters["peak_mib"] = peak_mib();
}

BENCHMARK(cells_by_days)
    ->Args({300, 100})
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

// 10 to 10,000 columns: the time per column must not grow.
BENCHMARK(cells_by_days)
    ->Args({10, 1})
    ->Args({100, 1})
    ->Args({100, 10})
    ->Args({100, 100})
    ->MeasureProcessCPUTime()
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide::bench
