#include "report/text/text_plant_order.h"

#include <string>

#include <doctest/doctest.h>

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

}  // namespace
}  // namespace slabtide
