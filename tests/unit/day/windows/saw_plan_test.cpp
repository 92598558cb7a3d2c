#include <doctest/doctest.h>

#include "slabtide/day/windows/saw_plan.h"
#include "support/sample_job.h"

namespace slabtide {

TEST_CASE("the uncut length is the longer side, or the walk's line") {
  Zone pad = test::zone_named("pad", test::rectangle(0, 0, 6, 4));
  CHECK(uncut_length_m(pad) == doctest::Approx(6.0));
  pad.path = Walkway{{{0, 0}, {6, 0}, {6, 4}}, 1.2};
  CHECK(uncut_length_m(pad) == doctest::Approx(10.0));
}

}  // namespace slabtide
