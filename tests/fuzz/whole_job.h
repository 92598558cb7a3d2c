#pragma once

#include <string>
#include <vector>

#include "support/byte_source.h"
#include "support/random_job.h"

// Complete jobs run through the program in this process: what is printed and written for any job.

namespace slabtide::fuzz {

/// How one job is run.
struct JobRun {
  std::string command = "plan";
  int samples = 0;
};

/// Plans the job in its own folder and checks the result: exit code 0, or 2 with a reason; no
/// invalid numbers; times in order; a page that agrees with the JSON. Returns the faults in words,
/// none if all is well.
std::vector<std::string> job_faults(const test::RandomJob& job, const JobRun& run);

/// The job that the bytes give, and how to run it.
struct DrawnJob {
  test::RandomJob job;
  JobRun run;
};
DrawnJob drawn_job(test::ByteSource bytes);

}  // namespace slabtide::fuzz
