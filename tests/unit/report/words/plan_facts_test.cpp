#include <doctest/doctest.h>

#include "slabtide/report/words/plan_facts.h"
#include "support/sample_job.h"

namespace slabtide {

TEST_CASE("the day beside a clock is that of the minute shown") {
  const Job job = test::sample_job({});
  const UtcTime midnight(Date(2026, 5, 15));
  CHECK(day_clock(midnight, job) == "Fri 12:00 AM");
  CHECK(day_clock(after_seconds(midnight, -20.0), job) == "Fri 12:00 AM");
  CHECK(day_clock(after_seconds(midnight, -40.0), job) == "11:59 PM");
  CHECK(day_clock(after_seconds(midnight, 86380.0), job) == "Sat 12:00 AM");
}

}  // namespace slabtide
