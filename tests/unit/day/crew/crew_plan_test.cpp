#include <algorithm>

#include <doctest/doctest.h>

#include "slabtide/day/crew/crew_plan.h"
#include "slabtide/day/crew/plan_crew.h"
#include "support/plan_of.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

Job two_pads() {
  Job job =
      test::sample_job({test::zone_named("landing", test::rectangle(0, 0, 4, 4), Finish::stamp),
                        test::zone_named("pad", test::rectangle(10, 0, 4, 4), Finish::broom)});
  job.pour.saws = {SawKind::early_entry};
  return job;
}

CrewPlan crew_of(const Job& job) { return test::plan_of(job).plan.crew; }

double minutes(UtcTime from, UtcTime to) { return seconds_between(from, to) / 60.0; }

}  // namespace

TEST_CASE("the smallest crew that misses nothing misses nothing, and one less does") {
  Job job = two_pads();
  const CrewPlan plan = crew_of(job);
  REQUIRE(plan.smallest_crew);
  const int smallest = *plan.smallest_crew;
  REQUIRE(smallest > 2);
  job.crew.finishers = smallest;
  CHECK(crew_of(job).schedule.late_min == 0);
  job.crew.finishers = smallest - 1;
  const CrewPlan fewer = crew_of(job);
  CHECK(fewer.schedule.late_min > 0);
  CHECK(!fewer.late.empty());
  REQUIRE(!fewer.remedies.empty());
  CHECK(fewer.remedies.front().late_min == 0);
  for (const CrewRemedy& remedy : fewer.remedies) CHECK(remedy.late_min < fewer.schedule.late_min);
}

TEST_CASE(
    "what leaves ten hours late is no remedy, and so many minutes are told as over ten hours") {
  CHECK(late_words(0) == "nothing late");
  CHECK(late_words(599) == "9 h 59 min late");
  CHECK(late_words(600) == "over 10 h late");
  // Each of them takes a day, all are due in an hour, and a second hand halves little of that.
  std::vector<Task> tasks(6);
  for (Task& task : tasks) {
    task.kind = TaskKind::broom;
    task.zone = "pad";
    task.place = PlaceId{};
    task.work_person_min = 1200.0;
    task.max_hands = 1;
    task.end_by_min = 60;
  }
  const Roster roster = usual_roster(2);
  const Schedule late = schedule(tasks, 2);
  REQUIRE(late.late_min > 6000);
  const std::vector<Schedule> larger{schedule(tasks, 3)};
  REQUIRE(larger.front().late_min < late.late_min);
  const CrewHelp help = crew_remedies(tasks, roster, late, larger);
  CHECK(help.remedies.empty());
  REQUIRE(help.rescues.size() == 1);
  CHECK(help.rescues.front().ways.empty());
  CHECK(rescue_words(help.rescues.front()) ==
        "nothing tried saves pad, not 3 hands, a retarder, placing it up to 90 min later, or "
        "pouring it alone: leave it for another day, or pour it in parts");
}

TEST_CASE("a plan and its remedies are the same on any number of threads") {
  Job job = two_pads();
  job.crew.finishers = *crew_of(job).smallest_crew - 1;
  const test::Planned planned = test::plan_of(job);
  REQUIRE(!planned.plan.crew.remedies.empty());
  for (const int threads : {2, 5}) {
    const DayPlan plan =
        plan_day(job, planned.run, default_practice(), std::nullopt, {.threads = threads});
    CHECK(plan.zones[1].whole.windows.front().opens ==
          planned.plan.zones[1].whole.windows.front().opens);
    CHECK(plan.crew.schedule.late_min == planned.plan.crew.schedule.late_min);
    CHECK(std::equal(plan.crew.remedies.begin(), plan.crew.remedies.end(),
                     planned.plan.crew.remedies.begin(), planned.plan.crew.remedies.end(),
                     [](const CrewRemedy& a, const CrewRemedy& b) {
                       return remedy_words(a) == remedy_words(b);
                     }));
  }
}

TEST_CASE("one comes an hour before the first work and leaves after the last") {
  const Job job = two_pads();
  const CrewPlan plan = crew_of(job);
  REQUIRE(plan.people.size() == 4);
  for (const CrewMember& member : plan.people) {
    REQUIRE(!member.visits.empty());
    const CrewVisit& day = member.visits.front();
    CHECK(minutes(day.arrives, plan.starts[day.tasks.front()]) == doctest::Approx(60.0));
    for (const CrewVisit& visit : member.visits) {
      CHECK(visit.leaves == plan.ends[visit.tasks.back()]);
    }
  }
  CHECK(plan.people.front().name == "finisher 1");
}

TEST_CASE("waits over half an hour are told, over three hours one goes home") {
  const CrewPlan plan = crew_of(two_pads());
  int told = 0;
  for (const CrewMember& member : plan.people) {
    for (std::size_t v = 0; v < member.visits.size(); ++v) {
      const CrewVisit& visit = member.visits[v];
      for (const IdleTime& idle : visit.idle) {
        ++told;
        CHECK(minutes(idle.from, idle.to) > 30.0);
        CHECK(minutes(idle.from, idle.to) <= 180.0);
      }
      if (v > 0) CHECK(minutes(member.visits[v - 1].leaves, visit.arrives) > 180.0);
    }
  }
  CHECK(told > 0);  // while the concrete sets
}

TEST_CASE("the tightest task has the least to spare") {
  const CrewPlan plan = crew_of(two_pads());
  REQUIRE(plan.tightest);
  for (std::size_t i = 0; i < plan.tasks.size(); ++i) {
    const Assignment& at = plan.schedule.assignments[i];
    const auto slack = plan.tasks[i].slack_min(at.start_min, at.end_min);
    if (slack) CHECK(*slack >= plan.tightest->slack_min);
  }
}

TEST_CASE("one finisher alone does what wants two, and is told to be short") {
  Job job = two_pads();
  job.crew.finishers = 1;
  const CrewPlan plan = crew_of(job);
  CHECK(plan.short_handed);
  CHECK(plan.people.size() == 1);
  CHECK(plan.schedule.late_min > 0);
  CHECK(plan.smallest_crew.value_or(0) > 1);
  job.crew.finishers = 0;
  CHECK_THROWS_AS(plan_crew(job, {}, {}, default_practice()), std::invalid_argument);
}

TEST_CASE("where no crew can help, the plan says how little the best loses") {
  Job job = two_pads();
  Practice practice = default_practice();
  practice.crew.rule(TaskKind::stamp).max_hands = 2;
  practice.crew.rule(TaskKind::stamp).rate_per_person_h = 1.0;
  const auto planned = test::plan_of(job);
  const CrewPlan plan = plan_crew(job, planned.plan.zones, planned.plan.cuts, practice);
  CHECK(!plan.smallest_crew);
  CHECK(plan.min_late_min > 0);
  CHECK(plan.enough_crew <= max_crew_tried);
}

TEST_CASE(
    "a hopelessly overloaded crew is told which finishes it loses, and how much it can pour") {
  Job job = test::sample_job({});
  for (int i = 0; i < 6; ++i) {
    Zone bay = test::zone_named("bay " + std::to_string(i + 1),
                                test::rectangle(5.0 * i, 0.0, 4.2, 4.2), Finish::stamp);
    job.pour.placing_sequence.push_back(bay.name);
    job.zones.push_back(std::move(bay));
  }
  job.crew.finishers = 2;
  const CrewPlan plan = crew_of(job);
  const std::vector<std::string> lost = lost_finish_names(plan);
  REQUIRE(lost.size() > 1);
  // Each of them has work of its finish that runs later than is borne, and no other zone has.
  for (const Zone& zone : job.zones) {
    bool is_late = false;
    for (const std::size_t task : plan.late) {
      is_late = is_late ||
                (plan.tasks[task].zone == zone.name && makes_the_finish(plan.tasks[task].kind) &&
                 plan.schedule.assignments[task].late_min > finish_lost_min);
    }
    CHECK(is_late == (std::find(lost.begin(), lost.end(), zone.name) != lost.end()));
  }
  const std::string words = crew_late_words(plan);
  CHECK(words.starts_with(std::to_string(lost.size()) + " finishes lost (" + lost.front()));
  if (plan.schedule.late_min >= hopeless_late_min) {
    CHECK(words.find(" late") == std::string::npos);
  }
  // What is said to save a zone: with so many hands its finish is lost no more.
  REQUIRE(!plan.rescues.empty());
  CHECK(plan.rescues.size() <= 3);
  int hands_tried = 0;
  int alone_tried = 0;
  for (const ZoneRescue& rescue : plan.rescues) {
    CHECK(std::find(lost.begin(), lost.end(), rescue.zone) != lost.end());
    for (const CrewRemedy& way : rescue.ways) {
      CHECK(std::find(way.lost.begin(), way.lost.end(), rescue.zone) == way.lost.end());
      if (way.kind == RemedyKind::pour_less) {
        // Poured alone, the crew can do it.
        Job alone = job;
        std::erase_if(alone.zones, [&](const Zone& zone) { return zone.name != rescue.zone; });
        alone.pour.placing_sequence = {rescue.zone};
        CHECK(lost_finish_names(crew_of(alone)).empty());
        ++alone_tried;
      }
      if (way.kind != RemedyKind::more_hands) continue;
      Job more = job;
      more.crew.finishers += way.amount;
      const std::vector<std::string> still = lost_finish_names(crew_of(more));
      CHECK(still == way.lost);
      // It is the least: one less still loses it.
      --more.crew.finishers;
      const std::vector<std::string> one_less = lost_finish_names(crew_of(more));
      CHECK(std::find(one_less.begin(), one_less.end(), rescue.zone) != one_less.end());
      ++hands_tried;
    }
  }
  CHECK(hands_tried > 0);
  CHECK(alone_tried > 0);
  const auto less =
      std::find_if(plan.remedies.begin(), plan.remedies.end(),
                   [](const CrewRemedy& remedy) { return remedy.kind == RemedyKind::pour_less; });
  REQUIRE(less != plan.remedies.end());
  REQUIRE(less->kept.size() + less->left.size() == job.zones.size());
  CHECK(less->amount == static_cast<int>(less->left.size()));
  // What is kept of the pour, the crew can do.
  Job kept = job;
  kept.zones.resize(less->kept.size());
  kept.pour.placing_sequence.resize(less->kept.size());
  CHECK(lost_finish_names(crew_of(kept)).empty());
}

TEST_CASE("no more hands are told than help") {
  Job job = test::sample_job(
      {test::zone_named("ramp", test::rectangle(0, 0, 3.6, 18), Finish::broom),
       test::zone_named("apron", test::rectangle(3.6, 0, 5.4, 4.2), Finish::stamp)});
  auto& weather = std::get<TypedWeather>(job.weather);
  weather.high_c = 35.5;
  weather.low_c = 23.0;
  job.mix.temperature = 31.0;
  job.crew.finishers = 2;
  const CrewPlan plan = crew_of(job);
  REQUIRE(!lost_finish_names(plan).empty());
  REQUIRE(plan.enough_crew < max_crew_tried);
  int told = 0;
  for (const CrewRemedy& remedy : plan.remedies) {
    if (remedy.kind != RemedyKind::more_hands) continue;
    CHECK(job.crew.finishers + remedy.amount <= plan.enough_crew);
    ++told;
  }
  CHECK(told == 3);
}

TEST_CASE("lateness that loses no finish is told in minutes, and one lost finish by its name") {
  CrewPlan plan;
  Task task;
  task.kind = TaskKind::broom;
  task.zone = "pad";
  task.place = PlaceId{};
  plan.tasks = {task};
  const auto late_by = [&plan](int minutes) {
    plan.schedule.late_min = minutes;
    plan.schedule.assignments = {Assignment{}};
    plan.schedule.assignments.front().late_min = minutes;
    return crew_late_words(plan);
  };
  CHECK(late_by(0) == "nothing late");
  CHECK(late_by(finish_lost_min) == "10 min late");
  CHECK(late_by(65) == "the finish of pad lost, 1 h 5 min late");
  CHECK(late_by(hopeless_late_min) == "the finish of pad lost");
  plan.tasks.front().kind = TaskKind::clean_up;
  CHECK(late_by(65) == "1 h 5 min late");
}

}  // namespace slabtide
