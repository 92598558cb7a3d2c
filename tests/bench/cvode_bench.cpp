#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "bench_columns.h"
#include "slab/column/column_solver.h"
#include "slab/process/setting.h"
#include "slabtide/day/pour/cell_times.h"
#include "support/cvode_column.h"

// Comparison with SUNDIALS' CVODE on the same points: how long each takes for one column with
// equally accurate set times. Errors are the largest difference of print, initial and final set
// from CVODE's own at a tolerance of 1e-10 and steps of at most a minute. For each pair of our step
// lengths CVODE gets the loosest tolerance, in steps of a tenth of a power of ten, with which it is
// no less accurate.

namespace slabtide::bench {
namespace {

using namespace test;

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

SolverSettings steps_of(const benchmark::State& state) {
  SolverSettings settings;
  settings.early_step_s = static_cast<double>(state.range(0));
  settings.late_step_s = static_cast<double>(state.range(1));
  settings.threads = 1;
  return settings;
}

std::vector<SetTimes> ours(const Pour& pour, const SolverSettings& settings) {
  std::vector<SetTimes> times;
  for (const ColumnHistory& h : solve_columns(pour.cases, pour.weather, settings)) {
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
  double max_s = 0.0;
  for (std::size_t i = 0; i < found.size(); ++i) {
    for (std::size_t k = 0; k < found[i].size(); ++k) {
      max_s = std::max(max_s, std::abs(found[i][k] - exact[i][k]));
    }
  }
  return max_s;
}

std::vector<SetTimes> exact(const Pour& pour) {
  return theirs(pour, {.relative = 1.0e-10, .absolute = 1.0e-10, .longest_step_s = 60.0});
}

CvodeSettings as_good_as(double off_s, const Pour& pour, const std::vector<SetTimes>& truth) {
  CvodeSettings settings;
  for (int tenths = 15; tenths < 90; ++tenths) {
    settings.relative = settings.absolute = std::pow(10.0, -0.1 * tenths);
    if (farthest_s(theirs(pour, settings), truth) <= off_s) break;
  }
  return settings;
}

void count(benchmark::State& state, double off_s) {
  state.counters["per_column"] = benchmark::Counter(
      static_cast<double>(column_count),
      benchmark::Counter::kIsIterationInvariantRate | benchmark::Counter::kInvert);
  state.counters["off_s"] = off_s;
}

void set_times_ours(benchmark::State& state) {
  const Pour pour;
  const SolverSettings settings = steps_of(state);
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(ours(pour, settings));
  count(state, farthest_s(ours(pour, settings), exact(pour)));
}

void set_times_cvode(benchmark::State& state) {
  const Pour pour;
  const std::vector<SetTimes> truth = exact(pour);
  const CvodeSettings settings =
      as_good_as(farthest_s(ours(pour, steps_of(state)), truth), pour, truth);
  for ([[maybe_unused]] auto round : state) benchmark::DoNotOptimize(theirs(pour, settings));
  state.counters["tolerance"] = settings.relative;
  count(state, farthest_s(theirs(pour, settings), truth));
}

BENCHMARK(set_times_ours)->Args({120, 600})->Args({240, 600})->Unit(benchmark::kMillisecond);
BENCHMARK(set_times_cvode)->Args({120, 600})->Args({240, 600})->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide::bench
