#include <cmath>
#include <vector>

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
  // 15 m3 are 19.62 yd3.
  CHECK(order.loads[0].volume_m3 == doctest::Approx(m3_from_yd3(6.75)));
  CHECK(order.loads[1].volume_m3 == doctest::Approx(m3_from_yd3(6.5)));
  CHECK(order.loads[2].volume_m3 == doctest::Approx(15.0 - m3_from_yd3(13.25)));
  CHECK(order.loads[2].sold_m3 == doctest::Approx(m3_from_yd3(6.5)));
  CHECK(order.sold_m3 == doctest::Approx(m3_from_yd3(19.75)));
  CHECK(minutes(order.placings[0].start, order.placings[0].end) == doctest::Approx(60.0));
  CHECK(order.placings[1].start == order.placings[0].end);
  CHECK(minutes(job.pour.start, order.placings[1].end) == doctest::Approx(90.0));
  CHECK(minutes(order.loads[1].batched, order.loads[1].arrives) == doctest::Approx(35.0));
  REQUIRE(order.loads[1].fractions.size() == 2);
  CHECK(order.loads[1].fractions[0].from_fraction == doctest::Approx(m3_from_yd3(0.675)));
}

TEST_CASE("loads are even, in what a plant sells, and none over a full truck") {
  // A contractor orders 10.75 yd³ as 5.5 and 5.25 (common practice, no source).
  Job job = two_pads();
  const auto sold_yd3 = [&](double ordered_yd3, double full_yd3) {
    job.zones.resize(1);
    job.pour.placing_sequence.resize(1);
    job.zones[0].outline = rectangle(0, 0, 10, m3_from_yd3(ordered_yd3));
    job.order.load_size_m3 = m3_from_yd3(full_yd3);
    std::vector<double> yards;
    for (const Load& load : plan_order(job, default_practice().placing).loads) {
      yards.push_back(std::round(100.0 * yd3_from_m3(load.sold_m3)) / 100.0);
    }
    return yards;
  };
  CHECK(sold_yd3(10.75, 10.0) == std::vector{5.5, 5.25});
  CHECK(sold_yd3(10.0, 10.0) == std::vector{10.0});
  CHECK(sold_yd3(25.2, 10.0) == std::vector{8.5, 8.5, 8.25});
  CHECK(sold_yd3(20.0, 10.0) == std::vector{10.0, 10.0});
  CHECK(sold_yd3(19.505, 9.7525) == std::vector{9.75, 9.75});
  CHECK(sold_yd3(10.004, 10.0) == std::vector{5.0, 5.0});
}

TEST_CASE("a load under what a plant charges extra for is short") {
  Job job = two_pads();
  job.zones[1].placed_at = after_seconds(job.pour.start, 3.0 * 3600.0);
  job.order.short_load_m3 = 5.0;
  const OrderPlan order = plan_order(job, default_practice().placing);
  REQUIRE(order.loads.size() == 3);
  CHECK(!order.loads[0].is_short);
  CHECK(!order.loads[2].is_short);
  job.order.short_load_m3 = 5.1;
  CHECK(plan_order(job, default_practice().placing).loads[2].is_short);
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
  // 31 min of the first load, a wait to 50, then the other 4.84 m3 in 29 min.
  const double rest_min = 60.0 - 6.0 * m3_from_yd3(6.75);
  CHECK(minutes(job.pour.start, order.placings[0].end) ==
        doctest::Approx(50.0 + rest_min).epsilon(1e-4));
  const PlacedFrom before = placed_from(order, 0, 0.51);
  const PlacedFrom after = placed_from(order, 0, 0.52);
  CHECK(before.load == 0);
  CHECK(after.load == 1);
  CHECK(minutes(before.placed, after.placed) > 14.0);
}

TEST_CASE("a zone with a time of its own starts a load of its own") {
  Job job = two_pads();
  job.zones[1].placed_at = after_seconds(job.pour.start, 3.0 * 3600.0);
  const OrderPlan order = plan_order(job, default_practice().placing);
  REQUIRE(order.loads.size() == 3);
  CHECK(order.loads[1].volume_m3 == doctest::Approx(10.0 - m3_from_yd3(6.75)));
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
