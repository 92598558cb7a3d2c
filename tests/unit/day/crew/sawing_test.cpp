#include "slabtide/day/crew/sawing.h"

#include <algorithm>

#include <doctest/doctest.h>

#include "support/plan_of.h"
#include "support/sample_job.h"

// When the saw really runs: where the crew comes late, every hour of it is the crew's.

namespace slabtide {

namespace {

/// A row of broomed bays, with a crew that has too few hands for them.
Job bays(int count, int finishers) {
  Job job = test::sample_job({});
  for (int i = 0; i < count; ++i) {
    Zone bay =
        test::zone_named("bay " + std::to_string(i + 1), test::rectangle(5.0 * i, 0.0, 4.2, 4.2));
    job.pour.placing_sequence.push_back(bay.name);
    job.zones.push_back(std::move(bay));
  }
  job.pour.saws = {SawKind::early_entry};
  job.crew.finishers = finishers;
  return job;
}

const Task& task_of(const SawnCut& sawn, const CrewPlan& crew) {
  REQUIRE(sawn.task);
  return crew.tasks.at(*sawn.task);
}

bool is_told(const DayPlan& plan, const std::string& zone) {
  return std::any_of(plan.cautions.begin(), plan.cautions.end(), [&zone](const Caution& caution) {
    return caution.code == "saw_waits" && caution.zone == zone;
  });
}

}  // namespace

TEST_CASE("an overloaded crew's cuts come when it comes to them, and how late is told") {
  const Job job = bays(10, 2);
  const DayPlan plan = test::plan_of(job).plan;
  const SawShift alone = plan.cuts.shift(SawKind::early_entry);
  const SawShift worked = worked_shift(SawKind::early_entry, plan.cuts, plan.crew);
  REQUIRE(worked.cuts.size() == alone.cuts.size());
  int late_zones = 0;
  for (const SawnCut& sawn : worked.cuts) {
    const PlannedCut& cut = plan.cuts.cuts[sawn.cut];
    const Task& task = task_of(sawn, plan.crew);
    CHECK(task.kind == TaskKind::saw);
    CHECK(task.place == PlaceId{cut.zone, {}});
    CHECK(sawn.starts >= plan.crew.starts[*sawn.task]);
    CHECK(sawn.ends <= plan.crew.ends[*sawn.task]);
    CHECK(sawn.starts >= *cut.early_entry_opens);
  }
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    const auto sawing = sawing_of(plan.cuts, plan.crew, job, zone);
    REQUIRE(sawing);
    // No hour but the crew's: a saw led by nobody would be hours sooner.
    std::optional<UtcTime> crew_starts;
    int crew_late_min = 0;
    for (std::size_t i = 0; i < plan.crew.tasks.size(); ++i) {
      const Task& task = plan.crew.tasks[i];
      if (task.kind != TaskKind::saw || task.place->zone != zone) continue;
      crew_late_min = std::max(crew_late_min, plan.crew.schedule.assignments[i].late_min);
      crew_starts = std::min(plan.crew.starts[i], crew_starts.value_or(plan.crew.starts[i]));
    }
    CHECK(sawing->starts == crew_starts);
    CHECK(sawing->late_min == crew_late_min);
    CHECK(is_told(plan, job.zones[zone].name) == (sawing->late_min > 0));
    if (sawing->late_min > 0) ++late_zones;
    CHECK(sawing->in_time() == (sawing->late_min == 0));
  }
  CHECK(late_zones > 0);
}

TEST_CASE("a crew with hands enough saws when the saw could by itself, to the minute") {
  const Job job = bays(2, 8);
  const DayPlan plan = test::plan_of(job).plan;
  const std::vector<SawnCut>& alone = plan.cuts.shift(SawKind::early_entry).cuts;
  const std::vector<SawnCut> worked = worked_shift(SawKind::early_entry, plan.cuts, plan.crew).cuts;
  REQUIRE(!worked.empty());
  for (std::size_t i = 0; i < worked.size(); ++i) {
    CHECK(worked[i].cut == alone[i].cut);
    const double later_s = seconds_between(alone[i].starts, worked[i].starts);
    CHECK(later_s >= 0.0);
    CHECK(later_s < 60.0);
    CHECK(!worked[i].late);
  }
  for (std::size_t zone = 0; zone < job.zones.size(); ++zone) {
    CHECK(sawing_of(plan.cuts, plan.crew, job, zone)->late_min == 0);
    CHECK(!is_told(plan, job.zones[zone].name));
  }
}

TEST_CASE("without a crew's hours the saw's own stand") {
  const DayPlan plan = test::plan_of(bays(1, 4)).plan;
  const SawShift worked = worked_shift(SawKind::early_entry, plan.cuts, {});
  const SawShift& alone = plan.cuts.shift(SawKind::early_entry);
  for (std::size_t i = 0; i < alone.cuts.size(); ++i) {
    CHECK(worked.cuts[i].starts == alone.cuts[i].starts);
    CHECK(!worked.cuts[i].task);
  }
}

TEST_CASE("the first cut is the earliest in a zone's own way of jointing") {
  const Job job = bays(8, 1);
  const DayPlan plan = test::plan_of(job).plan;
  const auto first = first_cut(plan.cuts, plan.crew);
  REQUIRE(first);
  for (const SawnCut& sawn : worked_shift(first->kind, plan.cuts, plan.crew).cuts) {
    CHECK(first->cut.starts <= sawn.starts);
  }
  CHECK(!first_cut(test::plan_of([] {
                     Job pad = bays(1, 4);
                     pad.zones.front().outline = test::rectangle(0, 0, 2, 2);
                     return pad;
                   }())
                       .plan.cuts,
                   {}));
}

}  // namespace slabtide
