#include "report/words/cell_words.h"

#include <string>

#include <doctest/doctest.h>

#include "support/plain_forecast.h"
#include "support/sample_job.h"

namespace slabtide {

TEST_CASE(
    "only of a large pour among obstacles it is said that its pieces are larger than the plan's") {
  // 1000 cells of 2 ft are 372 m2.
  const auto yard = [](double length_m) {
    Job job = test::sample_job({test::zone_named("yard", test::rectangle(0, 0, length_m, 10))});
    job.obstacles = {testing::tree({-3.0, 0.0}, 1.0, 5.0)};
    return job;
  };
  CHECK(larger_cells_words(yard(37.0)).empty());
  CHECK(larger_cells_words(yard(38.0)).find("coarser patches here") != std::string::npos);
  Job open = yard(38.0);
  open.obstacles.clear();
  CHECK(larger_cells_words(open).empty());
}

}  // namespace slabtide
