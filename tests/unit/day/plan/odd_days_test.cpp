#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include <doctest/doctest.h>

#include "slabtide/day/plan/verdict.h"
#include "slabtide/day/uncertainty/bands.h"
#include "support/plan_of.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// Days with mixes that nobody would order: what is reported about them must still make sense.

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

TEST_CASE("finishing that opens after the plan's end is told, and stops the day") {
  Job job = held_back(36.0);
  job.mix.supplier_initial_set_h = 24.0;
  job.mix.supplier_final_set_h = 30.0;
  const test::PlannedDay day(std::move(job));
  const CrewPlan& crew = day.plan().crew;
  const auto left_out = [&](TaskKind kind) {
    return std::any_of(crew.after_plan.begin(), crew.after_plan.end(),
                       [kind](const Task& task) { return task.kind == kind; });
  };
  CHECK(left_out(TaskKind::stamp));
  CHECK(left_out(TaskKind::detail_edge));
  for (const Task& task : crew.tasks) CHECK(task.kind != TaskKind::stamp);
  const auto& cautions = day.plan().cautions;
  const auto told = std::find_if(cautions.begin(), cautions.end(), [](const Caution& caution) {
    return caution.code == "after_plan";
  });
  REQUIRE(told != cautions.end());
  CHECK(told->level == CautionLevel::stop);
  CHECK(told->zone == "pad");
  CHECK(told->text.find("stamp") != std::string::npos);
  CHECK(judge(cautions).verdict == Verdict::think_again);
  CHECK(test::PlannedDay(held_back(4.0)).plan().crew.after_plan.empty());
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

TEST_CASE("concrete that sets in the truck sets as it is placed, not before") {
  Job job = pad_with_set(1.0, 1.5);
  job.zones.push_back(test::zone_named("walk", test::rectangle(6, 0, 1, 6)));
  job.pour.placing_sequence.push_back("walk");
  job.pour.transit_min = 200.0;
  job.pour.start += boost::posix_time::seconds(17 * 60 + 13);
  Admixture accelerator;
  accelerator.kind = AdmixtureKind::accelerator_non_chloride;
  accelerator.shift_h = -6.0;
  job.mix.admixtures = {accelerator};
  const test::PlannedDay day(job);
  for (const ZonePlan& zone : day.plan().zones) {
    REQUIRE(zone.whole.initial_set);
    CHECK(*zone.whole.initial_set >= zone.placed.start);
    CHECK(zone.whole.peak_evaporation_at >= zone.placed.start);
    CHECK(zone.whole.surface_peak_at >= zone.placed.start);
  }
}

/// The job's own weather, ending `minutes` after the last placing.
Forecast ending(const Job& job, double minutes) {
  Forecast forecast =
      high_low_forecast(std::get<TypedWeather>(job.weather), job.site, job.pour.date);
  const UtcTime end = after_seconds(plan_order(job, default_practice().placing).placings.back().end,
                                    60.0 * minutes);
  std::erase_if(forecast.hours, [end](const ForecastHour& hour) { return hour.at >= end; });
  forecast.hours.push_back(forecast.hours.back());
  forecast.hours.back().at = end;
  return forecast;
}

TEST_CASE("a forecast that ends with the placing is refused, or planned for days that come late") {
  const Job job = held_back(0.0);
  const Practice practice = default_practice();
  EnsembleSettings few;
  few.samples = 20;
  int planned = 0;
  for (int minutes = -3; minutes <= 25; ++minutes) {
    CAPTURE(minutes);
    const Forecast forecast = ending(job, minutes);
    const auto series = WeatherSeries::from_forecast(forecast);
    REQUIRE(series.ok());
    const auto run = run_pour(job, *series.value, practice, {});
    if (!run.ok()) {
      const char* when = minutes < 0 ? ", before the last concrete" : ", as the last concrete";
      CHECK(run.diagnostics[0].message.find(when) != std::string::npos);
      CHECK(minutes < 10);
      continue;
    }
    ++planned;
    const DayPlan plan = plan_day(job, *run.value, practice);
    const DayModel model(job, *run.value, plan, practice, {});
    const DayPlan sure = with_bands(plan, job, sample_days(model, few));
    CHECK_FALSE(sure.sureness->either_way_min);
  }
  CHECK(planned >= 16);
}

}  // namespace
}  // namespace slabtide
