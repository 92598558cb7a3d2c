// A third-party program: finds the installed library and calls it.
#include <iostream>

#include <slabtide/cli/command/run.h>
#include <slabtide/core/embedded.h>
#include <slabtide/job/reading/read_job.h>

int main() {
  const auto reading = slabtide::read_job(slabtide::embedded::starter_toml());
  if (!reading.ok()) return 1;
  std::cout << "the starting job has " << reading.value->zones.size() << " zones\n";
  // This depends on the whole library: it links only if every dependency is found.
  return slabtide::run({"--version"}, std::cout, std::cerr);
}
