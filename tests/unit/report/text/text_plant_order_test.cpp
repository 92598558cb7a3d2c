#include "report/text/text_plant_order.h"

#include <algorithm>
#include <string>

#include <doctest/doctest.h>

#include "slabtide/core/units.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

/// 3.05 m3 as drawn: 3.99 yd3, and 7 % over 4.27 yd3.
Job three_cubes() {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 6, 5), Finish::broom)});
  job.site.name = "Side yard";
  return job;
}

bool says(const std::string& text, const std::string& words) {
  CAPTURE(text);
  return text.find(words) != std::string::npos;
}

TEST_CASE("a load is ordered in quarter yards, and at least what is needed") {
  const std::string text = text_plant_order(test::PlannedDay(three_cubes()).pour());
  CHECK(says(text, "Load 1: 4.50 yd³"));
  CHECK(says(text, "Total: 4.50 yd³ in 1 load (4.0 yd³ as drawn and 7% over)"));
}

TEST_CASE("a standby is asked for where a low base takes enough to tell") {
  // A quarter inch under 30 m2 is a quarter of a yard, under one square metre nothing.
  CHECK(says(text_plant_order(test::PlannedDay(three_cubes()).pour()),
             "Have 0.2 yd³ more on standby: a base 0.25 in low takes it"));
  Job job = three_cubes();
  job.zones[0].outline = test::rectangle(0, 0, 1, 1);
  CHECK(!says(text_plant_order(test::PlannedDay(job).pour()), "standby"));
}

TEST_CASE("the plant's sheet says when it was made, and which load is short") {
  const std::string whole = text_plant_order(test::PlannedDay(three_cubes()).pour());
  CHECK(says(whole, "Forecast: "));
  CHECK(whole.find("short load") == std::string::npos);
  Job job = three_cubes();
  job.order.load_size_m3 = 3.1;
  const std::string text = text_plant_order(test::PlannedDay(job).pour());
  // The rest beside a load of 3.1 m3 is under the 4 yd3 from which a plant usually charges no fee.
  CHECK(says(text, ", a short load (under 4.0 yd³)\n"));
}

TEST_CASE("the plant hears the liquid a load takes, by the hundredweight and the load") {
  Job job = three_cubes();
  job.mix.cementitious_kg_m3 = 334.6;                               // 564 lb/yd3
  job.mix.admixtures = {{AdmixtureKind::retarder, 130.4, {}, {}}};  // 2 fl oz/cwt
  // By hand: 2 fl oz x 5.64 cwt/yd3 x 4.5 yd3 = 50.8 fl oz.
  CHECK(says(text_plant_order(test::PlannedDay(job).pour()), "retarder: 51 fl oz"));
  job.mix.admixtures = {{AdmixtureKind::retarder, {}, {}, 1.5}};
  CHECK(
      says(text_plant_order(test::PlannedDay(job).pour()), "retarder, by the supplier's own dose"));
}

TEST_CASE("metric jobs are ordered in quarter cubic metres") {
  Job job = three_cubes();
  job.units = UnitSystem::si;
  CHECK(says(text_plant_order(test::PlannedDay(job).pour()), "Load 1: 3.50 m³"));
}

TEST_CASE("the plant may be called off till as long before the first batch as `days` says") {
  Job job = three_cubes();  // placed from 8:00, batched 35 min before
  CHECK(says(text_plant_order(test::PlannedDay(job).pour()),
             "Call it off by 5:25 AM, 2 h before the first load is batched at 7:25 AM"));
}

TEST_CASE("a truck shared by zones of different doses is told as such, not dosed in part") {
  Job job = three_cubes();
  job.zones.push_back(test::zone_named("walk", test::rectangle(10, 0, 6, 1), Finish::broom));
  job.pour.placing_sequence = {"pad", "walk"};
  job.zones[1].admixtures = {{AdmixtureKind::retarder, 130.4, {}, {}}};
  const test::PlannedDay day(job);
  const std::string text = text_plant_order(day.pour());
  CHECK(says(text,
             "load 1 is for the pad and the walk, which ask for different admixtures: a "
             "truck is dosed as a whole"));
  CHECK_FALSE(says(text, "fl oz"));
  // The plan tells the same.
  const auto& cautions = day.plan().cautions;
  CHECK(std::any_of(cautions.begin(), cautions.end(), [&text](const Caution& caution) {
    return caution.code == "mixed_load" && caution.level == CautionLevel::caution &&
           text.find(caution.text) != std::string::npos;
  }));
}

TEST_CASE("a truck that has to wait for the one before is told, on the order and in the plan") {
  Job job = three_cubes();
  job.pour.placing_rate_m3_h = m3_from_yd3(4.5);
  job.order.load_size_m3 = 2.0;  // two of 2.25 yd³ at most: half an hour each
  job.order.truck_spacing_min = 20.0;
  const test::PlannedDay day(job);
  CHECK(day.run().order.loads[1].waits_min() == doctest::Approx(10.0));
  CHECK(says(text_plant_order(day.pour()), "waits 10 min on site until the load before is empty"));
  const auto& cautions = day.plan().cautions;
  CHECK(std::any_of(cautions.begin(), cautions.end(),
                    [](const Caution& caution) { return caution.code == "truck_waits"; }));
  job.order.truck_spacing_min = 30.0;
  CHECK_FALSE(says(text_plant_order(test::PlannedDay(job).pour()), "waits"));
}

}  // namespace
}  // namespace slabtide
