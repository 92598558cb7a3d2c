#include <benchmark/benchmark.h>

#include <sstream>
#include <string>

#include "slabtide/cli/command/run.h"

// `slabtide compare` on the hot demo job, from the job file to the printed text: about 25 choices
// and the turning point. The aim is under 3 s on two cores.

namespace slabtide {
namespace {

void compare(benchmark::State& state) {
  const std::string path = SLABTIDE_SOURCE_DIR "/data/demo/hot.toml";
  for ([[maybe_unused]] auto round : state) {
    std::ostringstream out;
    std::ostringstream err;
    if (run({"compare", path}, out, err) != 0) {
      state.SkipWithError(err.str().c_str());
      break;
    }
    benchmark::DoNotOptimize(out.str().size());
  }
}

BENCHMARK(compare)->MeasureProcessCPUTime()->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace slabtide
