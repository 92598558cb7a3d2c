#include <algorithm>
#include <set>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "support/plan_of.h"
#include "support/sample_job.h"

// What must hold for the whole day of any job: times, people and sums agree.

namespace slabtide {

namespace {

int number(int low, int high) { return *rc::gen::inRange(low, high + 1); }

Zone any_zone(int index) {
  const double x_m = 20.0 * index;
  Zone zone = test::zone_named("zone " + std::to_string(index),
                               test::rectangle(x_m, 0.0, number(2, 6), number(2, 4)),
                               *rc::gen::element(Finish::stamp, Finish::texture_roll, Finish::broom,
                                                 Finish::float_finish, Finish::trowel));
  if (number(0, 2) == 0) zone.border = Border{0.4, Finish::broom};
  if (number(0, 2) == 0) {
    FormedFace face;
    face.length_m = number(1, 5);
    face.height_m = 0.18;
    zone.faces = {face};
  }
  return zone;
}

Job any_job() {
  Job job = test::sample_job({});
  const int zones = number(1, 3);
  for (int i = 0; i < zones; ++i) {
    job.zones.push_back(any_zone(i));
    job.pour.placing_sequence.push_back(job.zones.back().name);
  }
  job.pour.start = UtcTime(job.pour.date, boost::posix_time::hours(number(6, 12)));
  job.pour.curing = *rc::gen::element(CuringKind::none, CuringKind::film, CuringKind::plastic);
  if (number(0, 1) == 0) job.pour.saws = {SawKind::early_entry, SawKind::wet};
  TypedWeather weather;
  weather.low_c = number(4, 20);
  weather.high_c = weather.low_c + number(4, 14);
  weather.wind_10m_m_s = number(0, 6);
  job.weather = weather;
  job.mix.temperature = static_cast<double>(number(14, 30));
  job.crew.finishers = number(1, 7);
  return job;
}

const ZonePlan& zone_of(const DayPlan& plan, const std::string& name) {
  return *std::find_if(plan.zones.begin(), plan.zones.end(),
                       [&name](const ZonePlan& zone) { return zone.name == name; });
}

void check_clock(const DayPlan& plan) {
  const CrewPlan& crew = plan.crew;
  RC_ASSERT(crew.starts.size() == crew.tasks.size());
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    RC_ASSERT(crew.starts[i] < crew.ends[i]);
    if (crew.tasks[i].zone.empty()) continue;
    const ZonePlan& zone = zone_of(plan, crew.tasks[i].zone);
    if (crew.tasks[i].kind == TaskKind::screed) {
      RC_ASSERT(crew.starts[i] >= zone.placed.start);
      RC_ASSERT(crew.ends[i] >= zone.placed.end);
    } else {
      RC_ASSERT(crew.starts[i] >= zone.placed.end);
    }
  }
}

/// Every task is done by as many people as it has hands, each only once.
void check_people(const CrewPlan& crew) {
  std::vector<int> hands(crew.tasks.size(), 0);
  for (const CrewMember& member : crew.people) {
    UtcTime last_end;
    for (const CrewVisit& visit : member.visits) {
      RC_ASSERT(visit.arrives <= crew.starts[visit.tasks.front()]);
      for (const std::size_t task : visit.tasks) {
        RC_ASSERT(last_end.is_not_a_date_time() || crew.starts[task] >= last_end);
        last_end = crew.ends[task];
        ++hands[task];
      }
      RC_ASSERT(visit.leaves == last_end);
    }
  }
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    RC_ASSERT(hands[i] == crew.schedule.assignments[i].hands);
  }
}

void check_sums(const Job& job, const CrewPlan& crew) {
  int late_min = 0;
  for (const std::size_t task : crew.late) late_min += crew.schedule.assignments[task].late_min;
  RC_ASSERT(late_min == crew.schedule.late_min);
  RC_ASSERT(static_cast<int>(crew.people.size()) == job.crew.finishers);
  RC_ASSERT(crew.min_late_min <= crew.schedule.late_min || crew.short_handed);
  if (crew.smallest_crew && !crew.short_handed) {
    RC_ASSERT((job.crew.finishers >= *crew.smallest_crew) == (crew.schedule.late_min == 0));
  }
  const bool tight = crew.tightest && crew.tightest->slack_min < 0;
  RC_ASSERT(tight == (crew.schedule.late_min > 0));
}

/// All of the work of a kind is assigned, whatever the parts and pieces.
void check_area(const Job& job, const DayPlan& plan) {
  const double rate_m2_h = default_practice().crew.rule(TaskKind::screed).rate_per_person_h;
  double screeded_m2 = 0.0;
  double zones_m2 = 0.0;
  for (const Task& task : plan.crew.tasks) {
    if (task.kind == TaskKind::screed) screeded_m2 += task.work_person_min / 60.0 * rate_m2_h;
  }
  for (const ZonePlan& zone : plan.zones) zones_m2 += zone.area_m2;
  RC_ASSERT(std::abs(screeded_m2 - zones_m2) < 1e-6 * zones_m2);
  RC_ASSERT(plan.supplies.front().kind == SupplyKind::concrete);
  RC_ASSERT(plan.zones.size() == job.zones.size());
}

void check_touch(const ZonePlan& zone) {
  for (const PartTouch& touch : zone.touch) {
    for (std::size_t i = 1; i < touch.quarters.size(); ++i) {
      RC_ASSERT(touch.quarters[i].touch >= touch.quarters[i - 1].touch);
      RC_ASSERT(touch.quarters[i].at > touch.quarters[i - 1].at);
    }
  }
}

}  // namespace

TEST_CASE("the day of any job agrees with itself") {
  CHECK(rc::check("clock, people, sums, areas and touch", [] {
    const Job job = any_job();
    const DayPlan plan = test::plan_of(job).plan;
    check_clock(plan);
    check_people(plan.crew);
    check_sums(job, plan.crew);
    check_area(job, plan);
    for (const ZonePlan& zone : plan.zones) check_touch(zone);
  }));
}

}  // namespace slabtide
