#include "slabtide/day/compare/pour_cost.h"

#include <algorithm>
#include <cmath>

#include <doctest/doctest.h>

#include "job/model/wording.h"
#include "slabtide/core/units.h"
#include "slabtide/day/compare/compared_choice.h"
#include "slabtide/day/uncertainty/bands.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

/// 1000 ft2 that take ten cubic yards at 564 lb/yd3 and 0.45, ordered without allowance.
Job thousand_feet() {
  const double side_m = std::sqrt(m2_from_ft2(1000.0));
  Job job = test::sample_job({test::zone_named("court", test::rectangle(0, 0, side_m, side_m))});
  job.zones[0].thickness_m = m3_from_yd3(10.0) / m2_from_ft2(1000.0);
  job.order.allowance_fraction = 0.0;
  job.order.load_size_m3 = m3_from_yd3(8.0);
  job.order.short_load_m3 = m3_from_yd3(5.5);
  job.mix.cementitious_kg_m3 = kg_m3_from_lb_yd3(564.0);
  job.mix.w_cm = 0.45;
  job.mix.temperature = celsius_from_fahrenheit(90.0);
  job.prices = Prices{};
  job.prices->currency = "$";
  return job;
}

/// Of two finishers who come at 8 and leave at 4:30 PM.
DayPlan two_hands() {
  DayPlan plan;
  ZonePlan court;
  court.name = "court";
  court.area_m2 = m2_from_ft2(1000.0);
  plan.zones = {court};
  const UtcTime arrives(Date(2026, 5, 14), boost::posix_time::hours(8));
  for (const char* name : {"finisher 1", "finisher 2"}) {
    CrewMember hand;
    hand.name = name;
    hand.visits.push_back({arrives, after_seconds(arrives, 8.5 * seconds_per_hour), {}, {}});
    plan.crew.people.push_back(hand);
  }
  return plan;
}

PourCost cost(const Job& job, const DayPlan& plan, const std::vector<double>& lost = {},
              const Mix* ordered = nullptr) {
  return cost_of_pour(job, plan_order(job, default_practice().placing), plan, lost,
                      ordered == nullptr ? job.mix : *ordered)
      .value();
}

double money(const PourCost& cost, CostPart part) {
  for (const CostItem& item : cost.items) {
    if (item.part == part) return item.money;
  }
  return 0.0;
}

bool leaves_out(const PourCost& cost, CostPart part) {
  return std::count(cost.left_out.begin(), cost.left_out.end(), part) == 1;
}

}  // namespace

TEST_CASE("a pour's cost is what arithmetic by hand says") {
  Job job = thousand_feet();
  Admixture retarder;
  retarder.dose_ml_100kg = ml_100kg_from_floz_cwt(2.0);
  job.mix.admixtures = {retarder};
  job.prices->hand_per_h = 50.0;
  job.prices->concrete_per_m3 = 165.0 / m3_per_yd3;
  job.prices->short_load = 120.0;
  job.prices->retarder_per_l = 0.25 / l_per_floz;
  const PourCost it = cost(job, two_hands());
  CHECK(money(it, CostPart::hands) == doctest::Approx(850.0));        // 2 x 8.5 h x $50
  CHECK(money(it, CostPart::concrete) == doctest::Approx(1650.0));    // 10 yd3 x $165
  CHECK(money(it, CostPart::short_loads) == doctest::Approx(240.0));  // twice 5 yd3: both under 5.5
  CHECK(money(it, CostPart::retarder) == doctest::Approx(28.20));     // 2 x 5.64 x 10 = 112.8 fl oz
  CHECK(it.likely() == doctest::Approx(2768.20));
  CHECK(it.left_out.empty());
  CHECK(!it.expected());
}

TEST_CASE("cooler concrete costs the ice that the balance of heat asks for") {
  const Job ordered = thousand_feet();
  Job job = thousand_feet();
  job.mix.temperature = celsius_from_fahrenheit(80.0);
  job.prices->ice_per_kg = 0.40 / kg_per_lb;
  // 0.22 (3000 + 564) + 253.8 = 1038 Btu/°F a yd3; a pound of ice takes up 90 + 112 = 202 Btu, so
  // 10 °F take 51.4 lb a yd3: 514 lb at $0.40. TM 5-852-4; the ice's term from memory.
  const PourCost iced = cost(job, two_hands(), {}, &ordered.mix);
  CHECK(money(iced, CostPart::ice) == doctest::Approx(205.5).epsilon(0.01));
  job.prices->ice_per_kg = std::nullopt;
  CHECK(leaves_out(cost(job, two_hands(), {}, &ordered.mix), CostPart::ice));
  job.prices->chilled_water_per_m3 = 4.0 / m3_per_yd3;
  const PourCost chilled = cost(job, two_hands(), {}, &ordered.mix);
  CHECK(money(chilled, CostPart::chilled_water) == doctest::Approx(40.0));
  CHECK(!leaves_out(chilled, CostPart::ice));
  job.mix.temperature = celsius_from_fahrenheit(100.0);
  job.prices->hot_water_per_m3 = 6.0 / m3_per_yd3;
  CHECK(money(cost(job, two_hands(), {}, &ordered.mix), CostPart::hot_water) ==
        doctest::Approx(60.0));
}

TEST_CASE("what lies on the slab is paid by the area") {
  Job job = thousand_feet();
  job.pour.evaporation_film = true;
  job.prices->film_per_m2 = 0.05 / m2_from_ft2(1.0);
  job.prices->plastic_per_m2 = 0.10 / m2_from_ft2(1.0);
  DayPlan plan = two_hands();
  plan.supplies.push_back(
      {SupplyKind::plastic, 1.1 * m2_from_ft2(1000.0), m2_from_ft2(1000.0), {}});
  plan.supplies.push_back({SupplyKind::blankets, 10.0, 10.0, {}});
  const PourCost it = cost(job, plan);
  CHECK(money(it, CostPart::film) == doctest::Approx(50.0));
  CHECK(money(it, CostPart::plastic) == doctest::Approx(100.0));
  CHECK(leaves_out(it, CostPart::blankets));
}

TEST_CASE("what has no price is left out by name, and without prices there is no cost") {
  Job job = thousand_feet();
  const PourCost it = cost(job, two_hands(), {0.5});
  CHECK(it.items.empty());
  CHECK(it.likely() == 0.0);
  for (const CostPart part :
       {CostPart::hands, CostPart::concrete, CostPart::short_loads, CostPart::redo}) {
    CHECK(leaves_out(it, part));
  }
  CHECK(!leaves_out(it, CostPart::ice));
  job.prices.reset();
  CHECK(!cost_of_pour(job, plan_order(job, default_practice().placing), two_hands(), {}, job.mix));
}

TEST_CASE("a dose told in hours has no amount, and is left out") {
  Job job = thousand_feet();
  Admixture retarder;
  retarder.shift_h = 2.0;
  job.mix.admixtures = {retarder};
  job.prices->retarder_per_l = 8.0;
  CHECK(leaves_out(cost(job, two_hands()), CostPart::retarder));
}

TEST_CASE("lost finishes cost their area, on the likely day and as often as they are lost") {
  Job job = thousand_feet();
  job.prices->redo_per_m2 = 12.0 / m2_from_ft2(1.0);
  DayPlan plan = two_hands();
  CHECK(cost(job, plan, {0.25}).likely() == 0.0);
  CHECK(cost(job, plan, {0.25}).expected().value() == doctest::Approx(3000.0));
  Task broom;
  broom.kind = TaskKind::broom;
  broom.place = PlaceId{0, {}};
  Assignment late;
  late.late_min = finish_lost_min;
  plan.crew.tasks = {broom};
  plan.crew.schedule.assignments = {late};
  CHECK(cost(job, plan, {0.25}).likely() == 0.0);
  ++plan.crew.schedule.assignments[0].late_min;
  CHECK(cost(job, plan, {0.25}).likely() == doctest::Approx(12000.0));
  CHECK(cost(job, plan, {0.25}).expected().value() == doctest::Approx(3000.0));
}

TEST_CASE("the cost over the sampled days is the mean of the days one by one") {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 10.0, 7.0)),
                              test::zone_named("court", test::rectangle(12, 0, 12.0, 7.0))});
  job.crew.finishers = *test::plan_of(job).plan.crew.smallest_crew;
  job.prices = Prices{};
  job.prices->hand_per_h = 50.0;
  job.prices->redo_per_m2 = 100.0;
  const test::Planned planned = test::plan_of(job);
  const Practice practice = default_practice();  // the model refers to it
  const DayModel model(job, planned.run, planned.plan, practice, SampleScale{});
  const Ensemble days = sample_days(model, {24, 0, {}});
  const auto cost_over = [&](const Ensemble& drawn) {
    const DayPlan plan = with_bands(planned.plan, job, drawn);
    return cost_of_pour(job, planned.run.order, plan, plan.crew.zone_lost_fractions, job.mix)
        .value();
  };
  double sum = 0.0;
  int lost = 0;
  for (std::size_t i = 0; i < days.days.size(); ++i) {
    Ensemble one = days;
    one.days = {days.days[i]};
    one.uncertain_inputs = {days.uncertain_inputs[i]};
    one.weights = {1.0};
    const DayPlan plan = with_bands(planned.plan, job, one);
    double redo = 0.0;
    for (std::size_t zone = 0; zone < 2; ++zone) {
      const double share = plan.crew.zone_lost_fractions[zone];
      CHECK((share == 0.0 || share == 1.0));
      if (share == 1.0) redo += 100.0 * planned.plan.zones[zone].area_m2;
    }
    lost += redo > 0.0 ? 1 : 0;
    sum += redo;
  }
  REQUIRE(lost > 0);
  REQUIRE(lost < 24);
  const PourCost all = cost_over(days);
  CHECK(all.expected_redo.value() == doctest::Approx(sum / 24.0));
  CHECK(all.expected().value() - money(all, CostPart::hands) == doctest::Approx(sum / 24.0));
}

TEST_CASE("money in words") {
  CHECK(money_words(1239.6, "$") == "$1,240");
  CHECK(money_words(1234567.0, "CAD") == "CAD 1,234,567");
  CHECK(money_words(999.4, "€") == "€999");
  CHECK(money_words(999.6, "") == "1,000");
  CHECK(money_words(6.255, "$") == "$6.26");
  CHECK(money_words(0.0, "$") == "$0");
  CHECK(money_words(-0.001, "kr") == "kr 0");
  CHECK(money_words(-120.0, "$") == "-$120");
}

TEST_CASE("money decides between choices that are alike in all else, and only there") {
  const auto choice = [](double hands, double disturbance) {
    ComparedChoice one{Choice{ChoiceKind::own, {}, {}, thousand_feet()}, {}, {disturbance, {}}};
    one.money = PourCost{{{CostPart::hands, hands}}, {}, std::nullopt};
    return one;
  };
  const CompareRules rules = default_practice().compare;
  CHECK(better(choice(400.0, 1.0), choice(500.0, 1.0), rules));
  CHECK(!better(choice(500.0, 1.0), choice(400.0, 1.0), rules));
  CHECK(better(choice(500.0, 0.5), choice(400.0, 1.0), rules));
  ComparedChoice stopped = choice(100.0, 0.0);
  stopped.figures.stakes.stops[0] = 1;
  CHECK(better(choice(500.0, 1.0), stopped, rules));
}

}  // namespace slabtide
