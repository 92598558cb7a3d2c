#pragma once

#include <string>
#include <vector>

#include "support/byte_source.h"
#include "support/random_job.h"

// Whole jobs through the program, in this process: what is printed and written for any job.

namespace slabtide::fuzz {

/// How one job is run.
struct JobRun {
  std::string command = "plan";
  int samples = 0;
};

/// Plans the job in a folder of its own and holds what comes of it against what must be: the exit
/// code 0, or 2 with a reason; no number that is none; times in order; the page as the JSON says.
/// Gives the faults in words, none where all is well.
std::vector<std::string> job_faults(const test::RandomJob& job, const JobRun& run);

/// The job that the bytes make, and how it is run.
struct DrawnJob {
  test::RandomJob job;
  JobRun run;
};
DrawnJob drawn_job(test::ByteSource bytes);

}  // namespace slabtide::fuzz
