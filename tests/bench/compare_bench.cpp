#include <benchmark/benchmark.h>

#include <sstream>
#include <string>
#include <vector>

#include "slabtide/cli/command/run.h"

// From the job file to the printed text, each under 3 s on two cores: `slabtide compare` on the hot
// demo job, about 25 choices and the turning point, and `slabtide days` on the spring demo, seven
// days of a forecast.

namespace slabtide {
namespace {

void run_words(benchmark::State& state, const std::vector<std::string>& words) {
  for ([[maybe_unused]] auto round : state) {
    std::ostringstream out;
    std::ostringstream err;
    if (run(words, out, err) != 0) {
      state.SkipWithError(err.str().c_str());
      break;
    }
    benchmark::DoNotOptimize(out.str().size());
  }
}

void compare(benchmark::State& state) {
  run_words(state, {"compare", SLABTIDE_SOURCE_DIR "/data/demo/hot.toml"});
}

void days(benchmark::State& state) {
  run_words(state, {"days", SLABTIDE_SOURCE_DIR "/data/demo/spring.toml", "--forecast",
                    SLABTIDE_SOURCE_DIR "/tests/cli/days_week/week.csv", "--now",
                    "2026-05-13T18:00-05:00"});
}

BENCHMARK(days)->MeasureProcessCPUTime()->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(compare)->MeasureProcessCPUTime()->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide
