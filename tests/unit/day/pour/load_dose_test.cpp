#include "day/pour/load_dose.h"

#include <doctest/doctest.h>

#include "support/sample_job.h"

// A truck is dosed as a whole: common practice, no source.

namespace slabtide {
namespace {

/// Two pads of 3 m3 in one truck, the second with retarder.
Job one_truck() {
  Job job = test::sample_job({test::zone_named("shade", test::rectangle(0, 0, 6, 5)),
                              test::zone_named("sun", test::rectangle(10, 0, 6, 5))});
  job.order.load_size_m3 = 8.0;
  job.zones[1].admixtures = {{AdmixtureKind::retarder, 130.0, {}, {}}};
  return job;
}

OrderPlan order_of(const Job& job) { return plan_order(job, default_practice().placing); }

}  // namespace

TEST_CASE("zones that ask for different admixtures cannot share a truck") {
  Job job = one_truck();
  const OrderPlan order = order_of(job);
  REQUIRE(order.loads.size() == 1);
  CHECK(is_dosed_in_part(job, order.loads[0]));
  CHECK(dosed_in_part_words(job, order.loads[0]) ==
        "load 1 is for the shade and the sun, which ask for different admixtures: a truck is dosed "
        "as a whole. Order a load for each, or the same for all of them");
  CHECK(first_dosed_in_part(job, order) == &order.loads[0]);
  job.zones[0].admixtures = job.zones[1].admixtures;
  CHECK(first_dosed_in_part(job, order_of(job)) == nullptr);
}

TEST_CASE("a load's own dose, or a truck of its own, serves each zone") {
  Job job = one_truck();
  job.order.loads = {{1, {{AdmixtureKind::retarder, 130.0, {}, {}}}}};
  CHECK(first_dosed_in_part(job, order_of(job)) == nullptr);
  job = one_truck();
  job.zones[1].placed_at = after_seconds(job.pour.start, 2.0 * 3600.0);
  const OrderPlan order = order_of(job);
  REQUIRE(order.loads.size() == 2);
  CHECK(first_dosed_in_part(job, order) == nullptr);
}

}  // namespace slabtide
