#include "slabtide/day/plan/shared_crew.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <stdexcept>

#include "slabtide/day/crew/sawing.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

PlannedPour pour_named(const std::string& name, int hour, int finishers) {
  Job job = test::sample_job({test::zone_named("pad", test::rectangle(0, 0, 5, 4), Finish::broom)});
  job.name = name;
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(hour));
  job.crew.finishers = finishers;
  test::Planned planned = test::plan_of(job);
  return {job, {}, default_practice(), std::move(planned.run), std::move(planned.plan)};
}

double way_min(UtcTime from, UtcTime to) { return seconds_between(from, to) / 60.0; }

}  // namespace

TEST_CASE("a crew on two sites is on one at a time, and has the way between them") {
  const std::vector<PlannedPour> pours{pour_named("east", 8, 3), pour_named("west", 9, 3)};
  const SharedCrew shared = share_crew(pours, 35);
  REQUIRE(shared.sites.size() == 2);
  CHECK(shared.sites[1].name == "west");
  CHECK(!shared.sites[1].other_crew);
  int journeys = 0;
  for (const CrewMember& member : shared.crew.people) {
    for (std::size_t i = 1; i < member.visits.size(); ++i) {
      const double between_min = way_min(member.visits[i - 1].leaves, member.visits[i].arrives);
      if (member.visits[i].site == member.visits[i - 1].site) continue;
      CHECK(between_min >= 35.0);
      ++journeys;
    }
  }
  CHECK(journeys > 0);
  // Each site's work is all there, at its own hours: nothing before its own windows.
  std::vector<std::size_t> of_site(2, 0);
  for (std::size_t i = 0; i < shared.crew.tasks.size(); ++i) {
    const Task& task = shared.crew.tasks[i];
    ++of_site[task.site];
    CHECK(shared.crew.schedule.assignments[i].start_min >= task.start_from_min);
  }
  CHECK(of_site[0] == pours[0].plan.crew.tasks.size());
  CHECK(of_site[1] == pours[1].plan.crew.tasks.size());
  const auto west = std::find_if(shared.crew.tasks.begin(), shared.crew.tasks.end(),
                                 [](const Task& task) { return task.site == 1; });
  CHECK(west->start_from_min == pours[1].plan.crew.tasks.front().start_from_min + 60);
}

TEST_CASE("what the shared crew does on one site is that job's crew plan, cuts and all") {
  const std::vector<PlannedPour> pours{pour_named("east", 8, 2), pour_named("west", 9, 2)};
  const SharedCrew shared = share_crew(pours, 35);
  std::size_t told = 0;
  for (std::size_t site = 0; site < pours.size(); ++site) {
    const PlannedPour& pour = pours[site];
    const CrewPlan there = crew_on_site(shared, pour, site);
    REQUIRE(there.tasks.size() == pour.plan.crew.tasks.size());
    CHECK(there.schedule.late_min == shared.sites[site].late_min);
    for (std::size_t i = 0; i < there.tasks.size(); ++i) {
      const std::size_t all = told + i;
      CHECK(there.tasks[i].kind == shared.crew.tasks[all].kind);
      CHECK(there.tasks[i].after == pour.plan.crew.tasks[i].after);
      CHECK(there.tasks[i].start_from_min == pour.plan.crew.tasks[i].start_from_min);
      CHECK(there.starts[i] == shared.crew.starts[all]);
      CHECK(way_min(pour.job.pour.start, there.starts[i]) ==
            there.schedule.assignments[i].start_min);
    }
    told += there.tasks.size();
    // Everybody's stays there hold each task as often as it has hands.
    std::size_t in_stays = 0;
    std::size_t hands = 0;
    for (const CrewMember& member : there.people) {
      for (const CrewVisit& visit : member.visits) {
        in_stays += visit.tasks.size();
        for (const std::size_t task : visit.tasks) CHECK(there.starts[task] >= visit.arrives);
      }
    }
    for (const Assignment& at : there.schedule.assignments) hands += at.who.size();
    CHECK(in_stays == hands);
    // The saw is on its first cut when the shared crew comes to it.
    const auto first = first_cut(pour.plan.cuts, there);
    REQUIRE(first);
    REQUIRE(first->cut.task);
    CHECK(there.tasks[*first->cut.task].kind == TaskKind::saw);
    CHECK(first->cut.starts == there.starts[*first->cut.task]);
  }
  CHECK_THROWS_AS(crew_on_site(shared, pours[0], 2), std::out_of_range);
}

TEST_CASE("one site alone is planned as its own job is") {
  const std::vector<PlannedPour> pours{pour_named("east", 8, 3)};
  const SharedCrew shared = share_crew(pours, 35);
  CHECK(shared.crew.starts == pours[0].plan.crew.starts);
  CHECK(shared.crew.ends == pours[0].plan.crew.ends);
}

TEST_CASE("what is late on which site adds up, and another crew's job is told") {
  const std::vector<PlannedPour> pours{pour_named("site", 8, 1), pour_named("site", 8, 4)};
  const SharedCrew shared = share_crew(pours, 20);
  CHECK(shared.sites[0].name == "site (1)");
  CHECK(shared.sites[1].name == "site (2)");
  CHECK(shared.sites[1].other_crew);
  CHECK(shared.sites[1].alone_min == pours[1].plan.crew.schedule.late_min);
  CHECK(shared.sites[0].late_min + shared.sites[1].late_min == shared.crew.schedule.late_min);
  CHECK(shared.crew.schedule.late_min > 0);
}

TEST_CASE("pours days apart, or none, share no crew") {
  CHECK_THROWS_AS(share_crew({}, 20), std::invalid_argument);
  std::vector<PlannedPour> pours{pour_named("east", 8, 3), pour_named("west", 9, 3)};
  CHECK_THROWS_AS(share_crew(pours, -1), std::invalid_argument);
  pours[1].job.pour.date += boost::gregorian::days(2);
  CHECK_THROWS_AS(share_crew(pours, 20), std::invalid_argument);
}

}  // namespace slabtide
