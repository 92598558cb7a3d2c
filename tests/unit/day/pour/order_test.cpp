#include <doctest/doctest.h>

#include "job/checks/load_runs.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/order.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

using test::rectangle;
using test::sample_job;
using test::zone_named;

double minutes(UtcTime from, UtcTime to) { return seconds_between(from, to) / 60.0; }

/// Two pads of 10 m3 and 5 m3 at 10 m3/h, no allowance, 6 m3 trucks.
Job two_pads() {
  Job job = sample_job(
      {zone_named("a", rectangle(0, 0, 10, 10)), zone_named("b", rectangle(20, 0, 10, 5))});
  for (Zone& zone : job.zones) zone.thickness_m = 0.1;
  job.pour.placing_rate_m3_h = 10.0;
  job.order.allowance_fraction = 0.0;
  job.order.load_size_m3 = 6.0;
  return job;
}

}  // namespace

TEST_CASE("loads follow one another and the zones follow from the loads") {
  const Job job = two_pads();
  const OrderPlan order = plan_order(job, default_practice().placing);
  CHECK(order.neat_m3 == doctest::Approx(15.0));
  REQUIRE(order.loads.size() == 3);
  CHECK(order.loads[0].volume_m3 == doctest::Approx(6.0));
  CHECK(order.loads[2].volume_m3 == doctest::Approx(3.0));
  CHECK(order.loads[2].sold_m3 == doctest::Approx(m3_from_yd3(4.0)));  // 3 m3 are 3.92 yd3
  CHECK(order.loads[0].sold_m3 == doctest::Approx(6.0));               // a truck holds no more
  CHECK(order.sold_m3 == doctest::Approx(12.0 + m3_from_yd3(4.0)));
  CHECK(order.loads[2].is_short);
  CHECK(!order.loads[0].is_short);
  CHECK(minutes(order.placings[0].start, order.placings[0].end) == doctest::Approx(60.0));
  CHECK(order.placings[1].start == order.placings[0].end);
  CHECK(minutes(job.pour.start, order.placings[1].end) == doctest::Approx(90.0));
  CHECK(minutes(order.loads[1].batched, order.loads[1].arrives) == doctest::Approx(35.0));
  REQUIRE(order.loads[1].fractions.size() == 2);
  CHECK(order.loads[1].fractions[0].from_fraction == doctest::Approx(0.6));
}

TEST_CASE("loads are counted as they are laid out") {
  Job job = two_pads();
  const auto laid_out = [&] { return plan_order(job, default_practice().placing).loads.size(); };
  for (const double load_m3 : {0.7, 1.0, 5.0, 6.0, 7.5, 11.0}) {
    CAPTURE(load_m3);
    job.order.load_size_m3 = load_m3;
    job.zones[1].placed_at.reset();
    CHECK(load_count(job) == laid_out());
    job.zones[1].placed_at = job.pour.start + boost::posix_time::hours(30);
    CHECK(load_count(job) == laid_out());
    job.zones[0].placed_at = job.pour.start;
    job.order.allowance_fraction = 0.07;
    CHECK(load_count(job) == laid_out());
    job.zones[0].placed_at.reset();
    job.order.allowance_fraction = 0.0;
  }
}

TEST_CASE("a truck that comes late holds up the zone") {
  Job job = two_pads();
  job.order.truck_spacing_min = 50.0;
  const OrderPlan order = plan_order(job, default_practice().placing);
  CHECK(minutes(job.pour.start, order.loads[1].starts) == doctest::Approx(50.0));
  // 36 min of the first load, a wait to 50, then the other 4 m3 in 24 min.
  CHECK(minutes(job.pour.start, order.placings[0].end) == doctest::Approx(74.0));
  const PlacedFrom before = placed_from(order, 0, 0.59);
  const PlacedFrom after = placed_from(order, 0, 0.61);
  CHECK(before.load == 0);
  CHECK(after.load == 1);
  CHECK(minutes(before.placed, after.placed) > 14.0);
}

TEST_CASE("a zone with a time of its own starts a load of its own") {
  Job job = two_pads();
  job.zones[1].placed_at = after_seconds(job.pour.start, 3.0 * 3600.0);
  const OrderPlan order = plan_order(job, default_practice().placing);
  REQUIRE(order.loads.size() == 3);
  CHECK(order.loads[1].volume_m3 == doctest::Approx(4.0));
  CHECK(order.loads[2].starts == *job.zones[1].placed_at);
  CHECK(order.placings[1].start == *job.zones[1].placed_at);
}

TEST_CASE("a truck too long on site is told") {
  Job job = two_pads();
  job.pour.placing_rate_m3_h = 3.0;  // two hours a truck
  const OrderPlan order = plan_order(job, default_practice().placing);
  CHECK(order.loads[0].over_limit);
  job.pour.placing_rate_m3_h = 12.0;
  CHECK(!plan_order(job, default_practice().placing).loads[0].over_limit);
}

TEST_CASE("allowance and a low base are counted") {
  Job job = two_pads();
  job.order.allowance_fraction = 0.1;
  const OrderPlan order = plan_order(job, default_practice().placing);
  CHECK(order.ordered_m3 == doctest::Approx(16.5));
  // A quarter inch of low base under a 4 in slab is 6.3 % (arithmetic).
  job = sample_job({zone_named("a", rectangle(0, 0, 10, 10))});
  const OrderPlan four_inch = plan_order(job, default_practice().placing);
  CHECK(four_inch.low_base_m3 / four_inch.neat_m3 == doctest::Approx(0.0625).epsilon(1e-6));
}

TEST_CASE("hauling sets the rate") {
  Pour pour;
  pour.placing_crew = 6;
  const PlacingRates rates = default_practice().placing;
  // 2.3 yd3 a worker-hour by chute, from memory.
  CHECK(yd3_from_m3(placing_rate_m3_h(pour, rates)) == doctest::Approx(6 * 2.3).epsilon(0.01));
  // 2.7 yd3 a worker-hour through the hose, from memory; however long it is. The same hands place
  // more by pump than off the chute (common practice, no source).
  const double chute = placing_rate_m3_h(pour, rates);
  pour.hauling = Hauling::pump;
  pour.haul_distance_m = 45.0;
  CHECK(yd3_from_m3(placing_rate_m3_h(pour, rates)) == doctest::Approx(6 * 2.7).epsilon(0.02));
  CHECK(placing_rate_m3_h(pour, rates) > chute);
  pour.haul_distance_m.reset();
  pour.hauling = Hauling::wheelbarrow;
  const double near = placing_rate_m3_h(pour, rates);
  pour.haul_distance_m = 45.0;
  CHECK(placing_rate_m3_h(pour, rates) < near);
}

}  // namespace slabtide
