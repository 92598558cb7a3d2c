#include <cstdlib>
#include <iostream>

#ifdef __GLIBC__
#include <malloc.h>
#endif

#include "core/leftovers.h"
#include "slabtide/cli/command/run.h"

namespace {

/// Histories take megabytes. Freed memory is kept for the next ones, because returning it to the
/// system and requesting it again took a quarter of the time of a column.
void keep_freed_memory() {
#ifdef __GLIBC__
  constexpr int kept_bytes = 1 << 28;
  constexpr int largest_bytes = 1 << 25;  // the largest value allowed
  mallopt(M_TRIM_THRESHOLD, kept_bytes);
  mallopt(M_MMAP_THRESHOLD, largest_bytes);
#endif
}

}  // namespace

int main(int argc, char** argv) {
  keep_freed_memory();
  slabtide::remove_unfinished_on_signals();
  return slabtide::run({argv + 1, argv + argc}, std::cout, std::cerr);
}
