#include <optional>

#include <doctest/doctest.h>

#include "day/windows/working_time.h"
#include "slabtide/job/model/job_clock.h"
#include "support/planned_day.h"
#include "support/sample_job.h"

// Washing and sealing. What to expect is common practice, no source: powder release is washed off
// after a day or more, never the same day; film-forming sealers wait four weeks unless their label
// says sooner, and go onto a dry slab that is not about to sweat.

namespace slabtide {
namespace {

Job stamped() {
  return test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4), Finish::stamp)});
}

Job hot(Job job) {
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 38.0;
  weather.low_c = 26.0;
  weather.dew_point_c = 10.0;
  job.mix.temperature = 32.0;
  return job;
}

const OperationWindow* window_of(const test::PlannedDay& day, Operation operation) {
  return day.plan().zones[0].whole.window(operation);
}

const Task* task_of(const test::PlannedDay& day, TaskKind kind) {
  for (const Task& task : day.plan().crew.tasks) {
    if (task.kind == kind) return &task;
  }
  return nullptr;
}

TEST_CASE("powder is not washed off on the day of the pour, however hot") {
  const Job job = hot(stamped());
  const test::PlannedDay day(job);
  const OperationWindow* wash = window_of(day, Operation::wash);
  REQUIRE(wash != nullptr);
  REQUIRE(wash->opens);
  CHECK(seconds_between(day.plan().zones[0].placed.start, *wash->opens) >= 24 * 3600.0);
  Job sooner = job;
  sooner.finish_work.wash_after_h = 0.0;  // the label allows it; the crew still comes next morning
  const test::PlannedDay next(sooner);
  CHECK(window_of(next, Operation::wash)->opens >=
        UtcTime(job.pour.date + boost::gregorian::days(1), boost::posix_time::hours(7)));
}

TEST_CASE("the crew washes when the plan says that all of it can be washed") {
  for (const Job& job : {stamped(), hot(stamped())}) {
    const test::PlannedDay day(job);
    const OperationWindow* wash = window_of(day, Operation::wash);
    const Task* task = task_of(day, TaskKind::wash);
    REQUIRE(wash->open_all_over);
    REQUIRE(task != nullptr);
    const double at_min = seconds_between(job.pour.start, *wash->open_all_over) / 60.0;
    CHECK(task->start_from_min >= at_min);
    CHECK(task->start_from_min < at_min + 1.0);
  }
}

TEST_CASE("a sealer waits four weeks, or as long as its label says") {
  Job job = hot(stamped());
  const test::PlannedDay usual(job);
  const OperationWindow* seal = window_of(usual, Operation::seal);
  REQUIRE(seal != nullptr);
  CHECK_FALSE(seal->opens);
  CHECK(seal->note.find("28 days") != std::string::npos);
  CHECK(seal->note.find(shown_date(job.pour.date + boost::gregorian::days(28), clock_style(job))) !=
        std::string::npos);
  CHECK(task_of(usual, TaskKind::seal) == nullptr);
  job.finish_work.seal_after_days = 1.0;
  const test::PlannedDay sooner(job);
  const auto opens = window_of(sooner, Operation::seal)->opens;
  REQUIRE(opens);
  CHECK(seconds_between(*window_of(sooner, Operation::wash)->opens, *opens) >= 4 * 3600.0);
  CHECK(task_of(sooner, TaskKind::seal) != nullptr);
}

TEST_CASE("no sealer goes onto a slab that is about to sweat") {
  Job dry = stamped();
  dry.finish_work.seal_after_days = 1.0;
  dry.finish_work.wash_after_h = 0.0;
  Job damp = dry;
  std::get<TypedWeather>(dry.weather).dew_point_c = -5.0;
  std::get<TypedWeather>(damp.weather).dew_point_c = 8.0;  // dew at night, the low is 8 °C
  for (Job* job : {&dry, &damp}) job->mix.supplier_initial_set_h = 2.0;
  for (Job* job : {&dry, &damp}) job->mix.supplier_final_set_h = 3.0;
  const test::PlannedDay first(dry);
  const test::PlannedDay second(damp);
  for (const test::PlannedDay* day : {&first, &second}) {
    const OperationWindow* seal = window_of(*day, Operation::seal);
    REQUIRE(seal->opens);
    // At the hour the plan gives, the surface of each cell stands over the dew point by 5 °F.
    const PourRun& run = day->run();
    const double at_s = seconds_between(run.weather.grid.start, *seal->open_all_over);
    const auto k = static_cast<std::size_t>(at_s / run.weather.grid.step_s);
    for (const ColumnHistory& history : run.histories) {
      CHECK(value_at(history.time_s, history.surface_c, at_s) > run.weather.dew_point_c[k] + 2.7);
    }
  }
}

TEST_CASE("liquid release leaves nothing to wash, and a job may have no sealer") {
  Job job = stamped();
  job.finish_work.release = ReleaseKind::liquid;
  job.finish_work.sealer = SealerKind::none;
  const test::PlannedDay day(job);
  CHECK(window_of(day, Operation::wash) == nullptr);
  CHECK(window_of(day, Operation::seal) == nullptr);
  CHECK(task_of(day, TaskKind::wash) == nullptr);
  CHECK(task_of(day, TaskKind::seal) == nullptr);
  for (const Supply& supply : day.plan().supplies) {
    CHECK(supply.kind != SupplyKind::release_powder);
    CHECK(supply.kind != SupplyKind::sealer);
  }
}

TEST_CASE("work on the days after begins in working hours") {
  const Job job = stamped();                              // UTC
  const WorkHours hours = default_practice().crew.hours;  // 7 to 17
  const auto on_day = [&](int day, int hour) {
    return UtcTime(job.pour.date + boost::gregorian::days(day), boost::posix_time::hours(hour));
  };
  CHECK(next_working_time(on_day(0, 15), job, hours) == on_day(1, 7));
  CHECK(next_working_time(on_day(1, 5), job, hours) == on_day(1, 7));
  CHECK(next_working_time(on_day(1, 12), job, hours) == on_day(1, 12));
  CHECK(next_working_time(on_day(1, 18), job, hours) == on_day(2, 7));
}

}  // namespace
}  // namespace slabtide
