#include <algorithm>

#include <doctest/doctest.h>

#include "slabtide/day/crew/supplies.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

const Supply* find(const std::vector<Supply>& list, SupplyKind kind) {
  const auto found = std::find_if(list.begin(), list.end(),
                                  [kind](const Supply& supply) { return supply.kind == kind; });
  return found == list.end() ? nullptr : &*found;
}

ZonePlan plan_of_zone(const Zone& zone, double area_m2) {
  ZonePlan plan;
  plan.name = zone.name;
  plan.area_m2 = plan.whole.area_m2 = area_m2;
  if (zone.finish == Finish::stamp || zone.finish == Finish::texture_roll) {
    OperationWindow wash;
    wash.operation = Operation::wash;
    plan.whole.windows = {wash};
  }
  return plan;
}

Zone bordered(Finish field, Finish border) {
  Zone zone = test::zone_named("pad", test::rectangle(0, 0, 5, 2), field);
  zone.border = Border{0.5, border};
  return zone;
}

/// Of 4 m2 of field and 6 m2 of border.
ZonePlan plan_of_bordered(const Zone& zone) {
  ZonePlan plan = plan_of_zone(zone, 10.0);
  plan.whole.area_m2 = 4.0;
  plan.border = PartPlan{};
  plan.border->area_m2 = 6.0;
  return plan;
}

}  // namespace

TEST_CASE("what is stamped takes release agent, what is broomed does not") {
  Job job =
      test::sample_job({test::zone_named("landing", test::rectangle(0, 0, 5, 2), Finish::stamp),
                        test::zone_named("pad", test::rectangle(10, 0, 5, 2), Finish::broom)});
  OrderPlan order;
  order.sold_m3 = 2.2;
  const std::vector<ZonePlan> zones{plan_of_zone(job.zones[0], 10.0),
                                    plan_of_zone(job.zones[1], 10.0)};
  const auto list = take_along(job, order, zones, default_practice());
  CHECK(find(list, SupplyKind::concrete)->amount == doctest::Approx(2.2));
  const Supply* powder = find(list, SupplyKind::release_powder);
  REQUIRE(powder != nullptr);
  CHECK(powder->amount == doctest::Approx(1.7));  // 10 m2 at 0.17 kg/m2
  CHECK(powder->zones == std::vector<std::string>{"landing"});
  CHECK(find(list, SupplyKind::release_liquid) == nullptr);
  CHECK(find(list, SupplyKind::sealer)->amount == doctest::Approx(3.2));  // two coats
  CHECK(find(list, SupplyKind::curing_compound) == nullptr);
  job.finish_work.release = ReleaseKind::liquid;
  job.finish_work.sealer = SealerKind::cure_and_seal;
  job.pour.curing = CuringKind::film;
  const auto other = take_along(job, order, zones, default_practice());
  CHECK(find(other, SupplyKind::release_powder) == nullptr);
  CHECK(find(other, SupplyKind::release_liquid)->amount == doctest::Approx(2.5));
  CHECK(find(other, SupplyKind::sealer) == nullptr);
  CHECK(find(other, SupplyKind::curing_compound) == nullptr);
  CHECK(find(other, SupplyKind::cure_and_seal)->amount == doctest::Approx(4.0));
}

TEST_CASE("a broomed border takes no release agent, but the sealer goes over it") {
  const Job job = test::sample_job({bordered(Finish::stamp, Finish::broom)});
  const ZonePlan plan = plan_of_bordered(job.zones[0]);
  const auto list = take_along(job, OrderPlan{}, {plan}, default_practice());
  CHECK(find(list, SupplyKind::release_powder)->area_m2 == doctest::Approx(4.0));
  CHECK(find(list, SupplyKind::sealer)->area_m2 == doctest::Approx(10.0));
}

TEST_CASE("an exposed walk takes surface retarder, its salted border rock salt") {
  const Job job = test::sample_job({bordered(Finish::exposed_aggregate, Finish::salt)});
  const ZonePlan plan = plan_of_bordered(job.zones[0]);
  const auto list = take_along(job, OrderPlan{}, {plan}, default_practice());
  const Supply* retarder = find(list, SupplyKind::surface_retarder);
  REQUIRE(retarder != nullptr);
  CHECK(retarder->amount == doctest::Approx(0.8));  // 4 m2 at 0.2 l/m2
  const Supply* salt = find(list, SupplyKind::salt);
  REQUIRE(salt != nullptr);
  CHECK(salt->amount == doctest::Approx(1.2));  // 6 m2 at 0.2 kg/m2
  CHECK(find(list, SupplyKind::release_powder) == nullptr);
}

TEST_CASE("a stamped border takes release agent, and the sealer goes over the field too") {
  const Job job = test::sample_job({bordered(Finish::broom, Finish::stamp)});
  ZonePlan plan = plan_of_bordered(job.zones[0]);
  OperationWindow wash;
  wash.operation = Operation::wash;
  plan.border->windows = {wash};
  const auto list = take_along(job, OrderPlan{}, {plan}, default_practice());
  CHECK(find(list, SupplyKind::release_powder)->area_m2 == doctest::Approx(6.0));
  CHECK(find(list, SupplyKind::sealer)->area_m2 == doctest::Approx(10.0));
}

TEST_CASE("cures and covers follow the job") {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 5, 2))});
  const std::vector<ZonePlan> zones{plan_of_zone(job.zones[0], 10.0)};
  job.pour.curing = CuringKind::film;
  auto list = take_along(job, OrderPlan{}, zones, default_practice());
  CHECK(find(list, SupplyKind::curing_compound)->amount == doctest::Approx(2.0));
  job.pour.curing = CuringKind::none;
  Cover cover;
  cover.zones = {"pad"};
  job.pour.covers = {cover};
  list = take_along(job, OrderPlan{}, zones, default_practice());
  CHECK(find(list, SupplyKind::curing_compound) == nullptr);
  CHECK(find(list, SupplyKind::blankets)->amount == doctest::Approx(11.0));  // with laps
  job.pour.covers[0].zones = {"another"};
  CHECK(find(take_along(job, OrderPlan{}, zones, default_practice()), SupplyKind::blankets) ==
        nullptr);
}

}  // namespace slabtide
