#include <algorithm>
#include <optional>

#include <doctest/doctest.h>

#include "support/planned_day.h"
#include "support/sample_job.h"

// Exposed aggregate and salt. What to expect is common practice, no source: a surface retarder goes
// onto the floated top once the sheen is gone; the paste is washed off when the body has set so
// that no stone comes loose, by the label and within a day; rock salt is rolled in while the top
// still takes a mark, and washed out a day later.

namespace slabtide {
namespace {

Job of_finish(Finish finish) {
  return test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 4, 4), finish)});
}

const OperationWindow& window_in(const test::PlannedDay& day, Operation operation) {
  const OperationWindow* window = day.plan().zones[0].whole.window(operation);
  REQUIRE(window != nullptr);
  return *window;
}

std::optional<Task> work_of(const test::PlannedDay& day, TaskKind kind) {
  for (const Task& task : day.plan().crew.tasks) {
    if (task.kind == kind) return task;
  }
  return std::nullopt;
}

struct Hours {
  UtcTime from;
  UtcTime to;
};

/// When such work is done.
Hours hours_of(const test::PlannedDay& day, TaskKind kind) {
  const CrewPlan& crew = day.plan().crew;
  const auto found = std::find_if(crew.tasks.begin(), crew.tasks.end(),
                                  [kind](const Task& task) { return task.kind == kind; });
  REQUIRE(found != crew.tasks.end());
  const auto index = static_cast<std::size_t>(found - crew.tasks.begin());
  return {crew.starts[index], crew.ends[index]};
}

bool warns_of(const test::PlannedDay& day, std::string_view code, CautionLevel level) {
  const auto& cautions = day.plan().cautions;
  return std::any_of(cautions.begin(), cautions.end(), [&](const Caution& caution) {
    return caution.code == code && caution.level == level;
  });
}

/// Empty if the plan has none with this code.
std::string text_of(const test::PlannedDay& day, std::string_view code) {
  for (const Caution& caution : day.plan().cautions) {
    if (caution.code == code) return caution.text;
  }
  return {};
}

double hours_after_placing(const test::PlannedDay& day, UtcTime at) {
  return seconds_between(day.plan().zones[0].placed.start, at) / 3600.0;
}

}  // namespace

TEST_CASE("the surface retarder goes on when the sheen is gone, before the top sets") {
  const test::PlannedDay day(of_finish(Finish::exposed_aggregate));
  const OperationWindow& retard = window_in(day, Operation::retard);
  const PartPlan& pad = day.plan().zones[0].whole;
  CHECK(*retard.open_all_over >= *pad.sheen_gone);
  CHECK(*retard.closes <= *pad.initial_set);
  const auto floated = work_of(day, TaskKind::float_work);
  const auto sprayed = work_of(day, TaskKind::retard);
  REQUIRE(sprayed);
  CHECK(floated->start_from_min <= sprayed->start_from_min);
}

TEST_CASE("aggregate is exposed once the body has set, next morning, and within a day") {
  const test::PlannedDay day(of_finish(Finish::exposed_aggregate));
  const OperationWindow& expose = window_in(day, Operation::expose);
  REQUIRE(expose.opens);
  CHECK(*expose.opens >= *day.plan().zones[0].whole.final_set);
  CHECK(*expose.opens >= *window_in(day, Operation::walk).opens);
  CHECK(hours_after_placing(day, *expose.closes) == doctest::Approx(24.0).epsilon(0.01));
  const auto work = work_of(day, TaskKind::expose);
  REQUIRE(work);
  // Poured at eight: at seven the next morning the retarder still holds.
  CHECK(hours_after_placing(day, *expose.opens) == doctest::Approx(23.0).epsilon(0.01));
  CHECK(work->end_by_min.has_value());
  CHECK(warns_of(day, "wash_water", CautionLevel::note));
}

TEST_CASE("the retarder's label comes before the usual hours") {
  Job job = of_finish(Finish::exposed_aggregate);
  job.finish_work.wash_off_after_h = 30.0;
  job.finish_work.wash_off_before_h = 36.0;
  const test::PlannedDay later(job);
  CHECK(hours_after_placing(later, *window_in(later, Operation::expose).opens) >= 30.0);
  job.finish_work.wash_off_after_h = std::nullopt;
  job.finish_work.wash_off_before_h = 18.0;
  const test::PlannedDay afternoon(job);
  CHECK(hours_after_placing(afternoon, *window_in(afternoon, Operation::expose).opens) < 9.0);
  CHECK(text_of(afternoon, "wash_off_hours").empty());  // within the working day
  job.pour.start = after_seconds(job.pour.start, 6.0 * 3600.0);
  job.finish_work.wash_off_before_h = 14.0;
  const test::PlannedDay tonight(job);
  CHECK(hours_after_placing(tonight, *window_in(tonight, Operation::expose).opens) < 14.0);
  CHECK(warns_of(tonight, "wash_off_hours", CautionLevel::caution));
  CHECK(text_of(tonight, "wash_off_hours") ==
        "the wash-off cannot wait for the next morning: the retarder wears off by then");
  job.finish_work.wash_off_before_h = 4.0;
  const test::PlannedDay never(job);
  CHECK(window_in(never, Operation::expose).is_never());
  CHECK(warns_of(never, "no_window", CautionLevel::stop));
  CHECK(
      text_of(never, "no_window") ==
      "no good time for the wash-off, the retarder wears off before the slab can take a hose: use "
      "one that holds longer");
}

TEST_CASE("a border's wash-off is the zone's where the field has none") {
  Job job = of_finish(Finish::broom);
  job.zones[0].border = Border{0.5, Finish::exposed_aggregate};
  job.pour.start = after_seconds(job.pour.start, 6.0 * 3600.0);
  job.finish_work.wash_off_before_h = 14.0;
  const test::PlannedDay day(job);
  const ZonePlan& plan = day.plan().zones[0];
  REQUIRE(plan.late_window(Operation::expose) != nullptr);
  CHECK(plan.late_window(Operation::expose) == plan.border->window(Operation::expose));
  CHECK(plan.late_window(Operation::walk) == plan.whole.window(Operation::walk));
  CHECK(plan.late_window(Operation::wash) == nullptr);
  CHECK(warns_of(day, "wash_off_hours", CautionLevel::caution));
}

TEST_CASE("a curing compound waits until retarder, salt and powder are washed off") {
  // Common practice, no source.
  Job job = of_finish(Finish::exposed_aggregate);
  job.pour.curing = CuringKind::film;
  const test::PlannedDay exposed(job);
  CHECK(hours_of(exposed, TaskKind::cure).from >= hours_of(exposed, TaskKind::expose).to);
  for (const Finish finish : {Finish::salt, Finish::stamp}) {
    job.zones[0].finish = finish;
    const test::PlannedDay washed(job);
    CHECK(hours_of(washed, TaskKind::cure).from >= hours_of(washed, TaskKind::wash).to);
  }
  job.finish_work.release = ReleaseKind::liquid;
  const test::PlannedDay liquid(job);
  CHECK(hours_of(liquid, TaskKind::cure).to <= *liquid.plan().zones[0].whole.final_set);
}

TEST_CASE("a cure-and-seal is called one, and goes onto a washed slab once that is dry") {
  // Common practice, no source: its label wants the surface dry.
  Job job = of_finish(Finish::stamp);
  job.pour.curing = CuringKind::film;
  job.finish_work.sealer = SealerKind::cure_and_seal;
  const test::PlannedDay powder(job);
  CHECK(!work_of(powder, TaskKind::cure));
  CHECK(!work_of(powder, TaskKind::seal));
  const double dry_s = seconds_between(hours_of(powder, TaskKind::wash).to,
                                       hours_of(powder, TaskKind::cure_and_seal).from);
  CHECK(dry_s >= powder.practice().set.dry_after_wash_h * 3600.0);
  job.finish_work.release = ReleaseKind::liquid;
  const test::PlannedDay liquid(job);
  CHECK(hours_of(liquid, TaskKind::cure_and_seal).to <= *liquid.plan().zones[0].whole.final_set);
}

TEST_CASE("rock salt is rolled in after the float and washed out a day later") {
  const test::PlannedDay day(of_finish(Finish::salt));
  const OperationWindow& salt = window_in(day, Operation::salt);
  CHECK(*salt.opens >= *window_in(day, Operation::float_work).opens);
  CHECK(*salt.closes <= *day.plan().zones[0].whole.initial_set);
  CHECK(hours_after_placing(day, *window_in(day, Operation::wash).opens) >= 24.0);
  CHECK(work_of(day, TaskKind::salt));
  CHECK(work_of(day, TaskKind::wash));
  CHECK(warns_of(day, "wash_water", CautionLevel::note));
  CHECK(!warns_of(test::PlannedDay(of_finish(Finish::broom)), "wash_water", CautionLevel::note));
}

}  // namespace slabtide
