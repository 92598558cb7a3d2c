#include <doctest/doctest.h>

#include "support/plan_of.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// Days of mixes that nobody would order: what is told of them still makes sense.

namespace slabtide {
namespace {

Job pad_with_set(double initial_h, double final_h) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4), Finish::stamp)});
  job.mix.supplier_initial_set_h = initial_h;
  job.mix.supplier_final_set_h = final_h;
  return job;
}

Job held_back(double hours) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4), Finish::stamp)});
  Admixture retarder;
  retarder.kind = AdmixtureKind::retarder;
  retarder.shift_h = hours;
  job.mix.admixtures = {retarder};
  return job;
}

void check_order(const PartPlan& part) {
  for (const OperationWindow& window : part.windows) {
    if (window.opens && window.closes) CHECK(*window.opens <= *window.closes);
    if (window.opens && window.open_all_over) CHECK(*window.opens <= *window.open_all_over);
    if (const auto minutes = window.minutes()) CHECK(*minutes >= 0.0);
    if (window.operation < Operation::walk || !window.opens) continue;
    REQUIRE(part.final_set);
    CHECK(*window.opens >= *part.final_set);
  }
}

TEST_CASE("sets far apart leave no window, and no window closes before it opens") {
  const test::PlannedDay day(pad_with_set(1.0, 36.0));
  const PartPlan& part = day.plan().zones[0].whole;
  check_order(part);
  const OperationWindow* stamp = part.window(Operation::stamp);
  REQUIRE(stamp != nullptr);
  CHECK(stamp->is_never());
  REQUIRE(stamp->stiff_by);
  CHECK(*stamp->stiff_by < *stamp->opens);
  REQUIRE(day.plan().tightest);
  CHECK(day.plan().tightest->minutes == 0.0);
}

TEST_CASE("what needs a set slab waits for it, however far the set is held back") {
  for (const double hours : {4.0, 12.0, 22.0, 30.0}) {
    const test::PlannedDay day(held_back(hours));
    check_order(day.plan().zones[0].whole);
  }
}

TEST_CASE("nothing is washed before it can be walked on") {
  const test::PlannedDay day(held_back(22.0));
  const PartPlan& part = day.plan().zones[0].whole;
  const OperationWindow* walk = part.window(Operation::walk);
  const OperationWindow* wash = part.window(Operation::wash);
  REQUIRE(walk != nullptr);
  REQUIRE(wash != nullptr);
  REQUIRE(wash->opens);
  CHECK(*walk->opens <= *wash->opens);
}

}  // namespace
}  // namespace slabtide
