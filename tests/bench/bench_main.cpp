#include <benchmark/benchmark.h>

#include <malloc.h>

// As in the program (src/main.cpp): freed memory is kept for the next histories.
int main(int argc, char** argv) {
  constexpr int kept_bytes = 1 << 28;
  constexpr int largest_bytes = 1 << 25;
  mallopt(M_TRIM_THRESHOLD, kept_bytes);
  mallopt(M_MMAP_THRESHOLD, largest_bytes);
  benchmark::Initialize(&argc, argv);
  if (benchmark::ReportUnrecognizedArguments(argc, argv)) return 1;
  benchmark::RunSpecifiedBenchmarks();
  benchmark::Shutdown();
  return 0;
}
