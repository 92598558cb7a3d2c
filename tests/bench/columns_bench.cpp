#include <benchmark/benchmark.h>

#include <cstddef>
#include <vector>

#include "bench_columns.h"
#include "slab/column/column_solver.h"

// Time to solve columns as a plan does, keeping their histories.

namespace slabtide::bench {
namespace {

/// The argument is the number of columns, the counter is the time per column.
void solve(benchmark::State& state) {
  const auto count = static_cast<std::size_t>(state.range(0));
  const SiteWeather weather = two_days();
  const std::vector<CellExposure> seen = exposures(weather, count);
  const MixModel model = usual_mix();
  std::vector<ColumnCase> cases;
  for (const CellExposure& exposure : seen) cases.push_back(placed_at_eight(model, exposure));

  for ([[maybe_unused]] auto round : state) {
    benchmark::DoNotOptimize(solve_columns(cases, weather, SolverSettings{}));
  }
  state.counters["per_column"] =
      benchmark::Counter(static_cast<double>(count), benchmark::Counter::kIsIterationInvariantRate |
                                                         benchmark::Counter::kInvert);
}

BENCHMARK(solve)->Arg(1)->Arg(10)->Arg(100)->Arg(150)->MeasureProcessCPUTime()->UseRealTime()->Unit(
    benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide::bench
