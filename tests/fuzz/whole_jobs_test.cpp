#include <cstdint>
#include <string>

#include <doctest/doctest.h>

#include "fuzz/whole_job.h"

// Jobs made at random, planned and written in every format; the fuzzer (tools/fuzz) goes further.

namespace slabtide {

TEST_CASE("whatever is asked, what is printed and written holds") {
  constexpr std::uint64_t jobs = 150;
  for (std::uint64_t seed = 0; seed < jobs; ++seed) {
    const fuzz::DrawnJob drawn = fuzz::drawn_job(test::bytes_of_seed(seed));
    if (drawn.run.command == "compare") continue;  // the slow one: left to the fuzzer
    for (const std::string& fault : fuzz::job_faults(drawn.job, drawn.run)) {
      CAPTURE(seed);
      CAPTURE(drawn.job.toml);
      FAIL_CHECK(fault);
    }
  }
}

}  // namespace slabtide
