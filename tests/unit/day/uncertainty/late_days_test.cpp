#include "day/uncertainty/late_days.h"

#include <algorithm>

#include <doctest/doctest.h>

#include "slabtide/day/uncertainty/bands.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

/// A pad with its plan and a few sampled days with equal weights.
struct Days {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3.0, 3.0))});
  test::Planned planned = test::plan_of(job);
  Ensemble ensemble = make();

  Ensemble make() const {
    const Practice practice = default_practice();
    const DayModel model(job, planned.run, planned.plan, practice, SampleScale{});
    EnsembleSettings settings;
    settings.samples = 4;
    Ensemble days = sample_days(model, settings);
    for (DayEvents& day : days.days) day = days.planned;
    return days;
  }
  double chance(TaskKind kind) const {
    const DayPlan plan = with_bands(planned.plan, job, ensemble);
    for (std::size_t i = 0; i < plan.crew.tasks.size(); ++i) {
      if (plan.crew.tasks[i].kind == kind) return plan.crew.late_chances[i].value_or(-1.0);
    }
    return -2.0;
  }
  LateDays late() const { return late_days(planned.plan.crew, planned.plan, ensemble); }
  void move(std::size_t day, double by_s) {
    for (ColumnEvents& column : ensemble.days[day]) {
      CellWindow& broom = column.window(Operation::broom);
      *broom.opens_s += by_s;
      *broom.closes_s += by_s;
    }
  }
};

TEST_CASE("days like the planned one miss nothing that the plan does not") {
  const Days days;
  REQUIRE(days.planned.plan.crew.late.empty());
  CHECK(days.chance(TaskKind::broom) == 0.0);
}

TEST_CASE("a window that is over before the crew comes is missed, a later one is waited for") {
  Days days;
  days.move(0, -3.0 * 3600.0);
  days.move(1, 1.0 * 3600.0);
  CHECK(days.chance(TaskKind::broom) == doctest::Approx(0.25));
}

TEST_CASE("what many days tell is put right by few, and stays within 0 and 1") {
  const LateDays many{10.0, 30.0, {0.5, std::nullopt}, {0.9, std::nullopt}, 0.3, {0.1, 0.2}};
  const LateDays few{8.0, 20.0, {0.4, std::nullopt}, {0.5, std::nullopt}, 0.2, {0.2, 0.2}};
  const LateDays solved{12.0, 25.0, {0.45, std::nullopt}, {0.8, std::nullopt}, 0.1, {0.0, 0.3}};
  const LateDays right = put_right(many, few, solved);
  CHECK(right.expected_min == doctest::Approx(14.0));
  CHECK(right.bad_day_min == doctest::Approx(35.0));
  CHECK(right.task_chances[0].value() == doctest::Approx(0.55));
  CHECK_FALSE(right.task_chances[1]);
  CHECK(right.lost_chances[0].value() == 1.0);
  CHECK(right.finish_lost_fraction == doctest::Approx(0.2));
  CHECK(right.zone_lost_fractions[0] == 0.0);
  CHECK(right.zone_lost_fractions[1] == doctest::Approx(0.3));
}

TEST_CASE("a finish lost on one day in three stops the pour, on one in four it asks for care") {
  const auto level = [](const Days& days) -> std::optional<CautionLevel> {
    const DayPlan plan = with_bands(days.planned.plan, days.job, days.ensemble);
    for (const Caution& caution : plan.cautions) {
      if (caution.code == "late_days") return caution.level;
    }
    return std::nullopt;
  };
  Days days;
  CHECK(!level(days));
  days.move(0, -3.0 * 3600.0);
  CHECK(level(days) == CautionLevel::caution);
  days.move(1, -3.0 * 3600.0);
  CHECK(level(days) == CautionLevel::stop);
}

TEST_CASE("a window that never opens is missed") {
  Days days;
  for (const std::size_t day : {0U, 1U}) {
    for (ColumnEvents& column : days.ensemble.days[day]) {
      column.window(Operation::broom) = {};
    }
  }
  CHECK(days.chance(TaskKind::broom) == doctest::Approx(0.5));
}

TEST_CASE("minutes late are weighed by the days, and the bad day is no worse than one in ten") {
  Days days;
  CHECK(days.late().expected_min == 0.0);
  CHECK(days.late().bad_day_min == 0.0);
  days.move(0, -3.0 * 3600.0);
  const double late_min = days.late().bad_day_min;
  CHECK(late_min > 60.0);
  CHECK(days.late().expected_min == doctest::Approx(0.25 * late_min));
  days.ensemble.weights = {0.09, 0.31, 0.30, 0.30};
  CHECK(days.late().expected_min == doctest::Approx(0.09 * late_min));
  CHECK(days.late().bad_day_min == 0.0);
}

TEST_CASE("a day that is all over an hour sooner is late by that hour, less what was to spare") {
  Days days;
  const CrewPlan& crew = days.planned.plan.crew;
  int slack_min = 0;
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    if (crew.tasks[i].kind != TaskKind::broom) continue;
    const Assignment& at = crew.schedule.assignments[i];
    slack_min = *crew.tasks[i].slack_min(at.start_min, at.end_min);
  }
  const int sooner_min = slack_min + 60;
  days.move(0, -60.0 * sooner_min);
  // Started as soon as the work before it is done, which did not move.
  CHECK(days.late().bad_day_min <= 60.0);
  CHECK(days.late().bad_day_min > 0.0);
}

TEST_CASE("hands that are held up on one pad come late to the next") {
  Job job =
      test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 6.0, 4.0), Finish::stamp),
                        test::zone_named("walk", test::rectangle(8, 0, 8.0, 2.0), Finish::stamp)});
  job.crew.finishers = *test::plan_of(job).plan.crew.smallest_crew;
  const test::Planned planned = test::plan_of(job);
  const Practice practice = default_practice();
  const DayModel model(job, planned.run, planned.plan, practice, SampleScale{});
  Ensemble days = sample_days(model, {1, 0, {}});
  days.days.front() = days.planned;
  const auto foot_traffic_is_late = [&] {
    const LateDays late = late_days(planned.plan.crew, planned.plan, days);
    bool any = false;
    for (std::size_t i = 0; i < late.task_chances.size(); ++i) {
      any = any ||
            (planned.plan.crew.tasks[i].zone == "walk" && late.task_chances[i].value_or(0.0) > 0.0);
    }
    return any;
  };
  CHECK(!foot_traffic_is_late());
  // Only the pad is later, until its work coincides with that on the walkway.
  const PartColumns pad = days.zones[0].whole;
  bool held_up = false;
  for (int later_min = 10; later_min <= 120; later_min += 10) {
    days.days.front() = days.planned;
    for (const std::size_t column : {pad.first, pad.last}) {
      for (const Operation operation : operations_of(Finish::stamp)) {
        CellWindow& window = days.days.front()[column].window(operation);
        if (!window.opens_s || !window.closes_s) continue;
        *window.opens_s += 60.0 * later_min;
        *window.closes_s += 60.0 * later_min;
      }
      if (pad.first == pad.last) break;
    }
    held_up = held_up || foot_traffic_is_late();
  }
  CHECK(held_up);
}

TEST_CASE("what does not follow the setting has no chance told") {
  const Days days;
  CHECK(days.chance(TaskKind::screed) == -1.0);
  CHECK(days.planned.plan.crew.late_chances.empty());
}

TEST_CASE("a task moves with its own zone, whatever else is called so") {
  Days days;
  days.job = test::sample_job({test::zone_named("near", test::rectangle(0, 0, 3.0, 3.0)),
                               test::zone_named("far", test::rectangle(9.0, 0, 3.0, 3.0))});
  days.planned = test::plan_of(days.job);
  days.ensemble = days.make();
  for (ZonePlan& zone : days.planned.plan.zones) zone.name = "pad";
  for (Task& task : days.planned.plan.crew.tasks) task.zone = "pad";
  const ZoneColumns far = days.ensemble.zones.at(1);
  for (const std::size_t column : {far.whole.first, far.whole.last}) {
    days.ensemble.days[0][column].window(Operation::broom) = {};
  }
  const DayPlan plan = with_bands(days.planned.plan, days.job, days.ensemble);
  for (std::size_t i = 0; i < plan.crew.tasks.size(); ++i) {
    const Task& task = plan.crew.tasks[i];
    if (task.kind != TaskKind::broom) continue;
    CHECK(*plan.crew.late_chances[i] == doctest::Approx(task.place->zone == 1 ? 0.25 : 0.0));
  }
}

}  // namespace
}  // namespace slabtide
