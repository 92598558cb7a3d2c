#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "bench_columns.h"
#include "cvode_column.h"
#include "slabtide/day/cell_times.h"
#include "slabtide/slab/setting.h"

// Against SUNDIALS' CVODE on the same cells: how long each takes for one column where its set
// times are as good. Errors are the farthest print, initial or final set from CVODE's own at a
// tolerance of 1e-10 and steps no longer than a minute.

namespace slabtide::bench {
namespace {

constexpr std::size_t column_count = 32;
constexpr double print_psi = 40.0;

struct Pour {
  SiteWeather weather = two_days();
  std::vector<CellExposure> seen = exposures(weather, column_count);
  MixModel mix = usual_mix();
  std::vector<ColumnCase> cases;

  Pour() {
    for (const CellExposure& exposure : seen) cases.push_back(placed_at_eight(mix, exposure));
  }
  Pour(const Pour&) = delete;
  Pour& operator=(const Pour&) = delete;
};

SolverSettings one_thread() {
  SolverSettings settings;
  settings.threads = 1;
  return settings;
}

std::vector<SetTimes> ours(const Pour& pour) {
  std::vector<SetTimes> times;
  for (const ColumnHistory& h : solve_columns(pour.cases, pour.weather, one_thread())) {
    times.push_back({first_reaches(h.time_s, h.resistance_work_psi, print_psi).value(),
                     first_reaches(h.time_s, h.resistance_middle_psi, initial_set_psi).value(),
                     first_reaches(h.time_s, h.resistance_middle_psi, final_set_psi).value()});
  }
  return times;
}

std::vector<SetTimes> theirs(const Pour& pour, const CvodeSettings& settings) {
  std::vector<SetTimes> times;
  for (const ColumnCase& column : pour.cases) {
    times.push_back(cvode_set_times(column, pour.weather, SolverSettings{}, settings));
  }
  return times;
}

double farthest_s(const std::vector<SetTimes>& found, const std::vector<SetTimes>& exact) {
  double most_s = 0.0;
  for (std::size_t i = 0; i < found.size(); ++i) {
    for (std::size_t k = 0; k < found[i].size(); ++k) {
      most_s = std::max(most_s, std::abs(found[i][k] - exact[i][k]));
    }
  }
  return most_s;
}

std::vector<SetTimes> exact(const Pour& pour) {
  return theirs(pour, {.relative = 1.0e-10, .absolute = 1.0e-10, .longest_step_s = 60.0});
}

void count(benchmark::State& state, double off_s) {
  state.counters["per_column"] = benchmark::Counter(
      static_cast<double>(column_count),
      benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
  state.counters["off_s"] = off_s;
}

void set_times_ours(benchmark::State& state) {
  const Pour pour;
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(ours(pour));
  count(state, farthest_s(ours(pour), exact(pour)));
}

/// The argument is the tolerance, as the exponent of ten times two.
void set_times_cvode(benchmark::State& state) {
  const Pour pour;
  const double tolerance = std::pow(10.0, -0.5 * static_cast<double>(state.range(0)));
  const CvodeSettings settings{.relative = tolerance, .absolute = tolerance};
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(theirs(pour, settings));
  state.counters["tolerance"] = tolerance;
  count(state, farthest_s(theirs(pour, settings), exact(pour)));
}

BENCHMARK(set_times_ours)->Unit(benchmark::kMillisecond);
BENCHMARK(set_times_cvode)->DenseRange(4, 12)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide::bench
