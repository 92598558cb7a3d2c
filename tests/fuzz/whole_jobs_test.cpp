#include <cstdint>
#include <string>

#include <doctest/doctest.h>

#include "fuzz/whole_job.h"
#include "support/random_job.h"

// Random jobs, planned and written in every format. The fuzzer (tools/fuzz) does more, and so does
// SLABTIDE_FIRST_JOB=150 SLABTIDE_JOBS=5000 build/test/tests/fuzz/whole_jobs

namespace slabtide {

TEST_CASE("whatever is asked, what is printed and written holds") {
  const std::uint64_t first = test::first_job(0);
  const std::uint64_t jobs = test::job_count(150);
  for (std::uint64_t seed = first; seed < first + jobs; ++seed) {
    const fuzz::DrawnJob drawn = fuzz::drawn_job(test::bytes_of_seed(seed));
    if (drawn.run.command == "compare") continue;  // slow, so left to the fuzzer
    for (const std::string& fault : fuzz::job_faults(drawn.job, drawn.run)) {
      CAPTURE(seed);
      CAPTURE(drawn.job.toml);
      FAIL_CHECK(fault);
    }
  }
}

}  // namespace slabtide
