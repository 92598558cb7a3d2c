// A stranger's program: finds the installed library and calls into it.
#include <iostream>

#include <slabtide/cli/command/run.h>
#include <slabtide/core/embedded.h>
#include <slabtide/job/reading/read_job.h>

int main() {
  const auto reading = slabtide::read_job(slabtide::embedded::starter_toml());
  if (!reading.ok()) return 1;
  std::cout << "the starting job has " << reading.value->zones.size() << " zones\n";
  // All of the library hangs on this one: it links only where every dependency is found.
  return slabtide::run({"--version"}, std::cout, std::cerr);
}
