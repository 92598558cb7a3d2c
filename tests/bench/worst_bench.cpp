#include <benchmark/benchmark.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "slabtide/cli/command/run.h"
#include "worst_jobs.h"

// The worst jobs that are read, from the job file to the printed text. The aims are 2 s for a plan
// and 10 s for a comparison on two free cores: 4 and 20 s of processor time.

namespace slabtide::bench {
namespace {

void whole_command(benchmark::State& state, const std::string& command, const WorstJob& job) {
  const auto path = std::filesystem::temp_directory_path() / ("slabtide-" + job.name + ".toml");
  std::ofstream(path) << job.toml;
  for ([[maybe_unused]] auto round : state) {
    std::ostringstream out;
    std::ostringstream err;
    if (run({command, path.string()}, out, err) != 0) {
      state.SkipWithError(err.str().c_str());
      break;
    }
    benchmark::DoNotOptimize(out.str().size());
  }
  std::filesystem::remove(path);
}

const bool registered = [] {
  for (const WorstJob& job : worst_jobs()) {
    for (const std::string command : {"plan", "compare"}) {
      benchmark::RegisterBenchmark(
          ("worst/" + command + "/" + job.name).c_str(),
          [command, job](benchmark::State& state) { whole_command(state, command, job); })
          ->MeasureProcessCPUTime()
          ->UseRealTime()
          ->Unit(benchmark::kMillisecond)
          ->Iterations(1);
    }
  }
  return true;
}();

}  // namespace
}  // namespace slabtide::bench
