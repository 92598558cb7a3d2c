// Compiled once for each instruction set, like src/slab/column/column_core.cpp.
#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "peak_bench.cpp"
#include <hwy/foreach_target.h>
//
#include <hwy/highway.h>

#include <cstddef>
#include <cstdint>

HWY_BEFORE_NAMESPACE();
namespace slabtide::bench {
namespace HWY_NAMESPACE {

namespace hn = hwy::HWY_NAMESPACE;

constexpr std::size_t chains = 12;  // enough that none has to wait for its own result

/// `rounds` of independent multiply-adds; returns the total number of operations and, in `out`, a
/// value that depends on all of them.
std::uint64_t multiply_and_add(std::uint64_t rounds, float* out) {
  const hn::ScalableTag<float> tag;
  const auto factor = hn::Set(tag, 0.999999F);
  const auto addend = hn::Set(tag, 1.0e-7F);
  // Different start values: the compiler merges chains with equal values.
  const auto from = [&tag](float value) HWY_ATTR { return hn::Set(tag, value); };
  auto a = from(1.0F), b = from(1.1F), c = from(1.2F), d = from(1.3F), e = from(1.4F);
  auto f = from(1.5F), g = from(1.6F), h = from(1.7F), i = from(1.8F), j = from(1.9F);
  auto k = from(2.0F), l = from(2.1F);
  for (std::uint64_t round = 0; round < rounds; ++round) {
    a = hn::MulAdd(a, factor, addend);
    b = hn::MulAdd(b, factor, addend);
    c = hn::MulAdd(c, factor, addend);
    d = hn::MulAdd(d, factor, addend);
    e = hn::MulAdd(e, factor, addend);
    f = hn::MulAdd(f, factor, addend);
    g = hn::MulAdd(g, factor, addend);
    h = hn::MulAdd(h, factor, addend);
    i = hn::MulAdd(i, factor, addend);
    j = hn::MulAdd(j, factor, addend);
    k = hn::MulAdd(k, factor, addend);
    l = hn::MulAdd(l, factor, addend);
  }
  const auto sum = hn::Add(
      hn::Add(hn::Add(a, b), hn::Add(c, d)),
      hn::Add(hn::Add(hn::Add(e, f), hn::Add(g, h)), hn::Add(hn::Add(i, j), hn::Add(k, l))));
  *out = hn::GetLane(sum);
  return rounds * chains * 2 * hn::Lanes(tag);
}

}  // namespace HWY_NAMESPACE
}  // namespace slabtide::bench
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <ctime>
#include <vector>

#include "bench_columns.h"
#include "counted_number.h"
#include "slab/column/column_solver.h"

// The fraction of the processor's single-precision peak that the columns reach: operations counted
// over processor time, both on one thread. The peak is that of independent multiply-adds (two
// operations each) on the widest instruction set, measured here.

namespace slabtide::bench {
namespace {

HWY_EXPORT(multiply_and_add);

constexpr std::size_t columns = 64;
constexpr double giga = 1.0e9;

double processor_s() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

/// Operations per second, the best of several runs.
double peak() {
  double best = 0.0;
  for (int go = 0; go < 10; ++go) {
    float out = 0.0F;
    const double start_s = processor_s();
    const auto operations =
        static_cast<double>(HWY_DYNAMIC_DISPATCH(multiply_and_add)(4'000'000, &out));
    benchmark::DoNotOptimize(out);
    best = std::max(best, operations / (processor_s() - start_s));
  }
  return best;
}

void fraction_of_peak(benchmark::State& state) {
  const SiteWeather weather = two_days();
  const std::vector<CellExposure> seen = exposures(weather, columns);
  const MixModel mix = usual_mix();
  SolverSettings settings;
  settings.threads = 1;
  std::vector<ColumnCase> cases;
  for (const CellExposure& exposure : seen) cases.push_back(placed_at_eight(mix, exposure));
  double operations = 0.0;
  for (const ColumnCase& column : cases) {
    operations += static_cast<double>(operations_of_column(column, weather, settings));
  }
  double best = 0.0;
  for ([[maybe_unused]] auto round : state) {
    const double start_s = processor_s();
    benchmark::DoNotOptimize(solve_columns(cases, weather, settings));
    best = std::max(best, operations / (processor_s() - start_s));
  }
  const double max = peak();
  state.counters["columns_gflops"] = best / giga;
  state.counters["peak_gflops"] = max / giga;
  state.counters["share"] = best / max;
  state.counters["operations_per_column"] = operations / static_cast<double>(columns);
}

BENCHMARK(fraction_of_peak)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide::bench
#endif
