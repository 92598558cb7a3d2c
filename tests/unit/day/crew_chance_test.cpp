#include <doctest/doctest.h>

#include "slabtide/day/bands.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {
namespace {

/// A pad with its plan and a few days that may come, each weighing the same.
struct Days {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 3.0, 3.0))});
  test::Planned planned = test::plan_of(job);
  Ensemble ensemble = make();

  Ensemble make() const {
    const Practice practice = default_practice();
    const DayModel model(job, planned.run, planned.plan, practice, DrawScale{});
    EnsembleSettings settings;
    settings.draws = 4;
    Ensemble days = draw_days(model, settings);
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

TEST_CASE("a window that never opens is missed") {
  Days days;
  for (const std::size_t day : {0U, 1U}) {
    for (ColumnEvents& column : days.ensemble.days[day]) {
      column.window(Operation::broom) = {};
    }
  }
  CHECK(days.chance(TaskKind::broom) == doctest::Approx(0.5));
}

TEST_CASE("what does not follow the setting has no chance told") {
  const Days days;
  CHECK(days.chance(TaskKind::screed) == -1.0);
  CHECK(days.planned.plan.crew.late_chances.empty());
}

}  // namespace
}  // namespace slabtide
