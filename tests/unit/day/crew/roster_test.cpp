#include "slabtide/day/crew/roster.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <utility>

#include "day/crew/lent_tasks.h"
#include "slabtide/day/crew/schedule.h"
#include "support/sample_job.h"

namespace slabtide {

namespace {

constexpr int far_min = std::numeric_limits<int>::max() / 4;

Task work(double person_min, int from_min, int by_min) {
  Task task;
  task.kind = TaskKind::float_work;
  task.work_person_min = person_min;
  task.start_from_min = task.end_from_min = from_min;
  task.end_by_min = by_min;
  return task;
}

RosterHand hand_of(double pace, std::vector<Shift> shifts = {}) {
  RosterHand hand;
  hand.pace = pace;
  hand.shifts = std::move(shifts);
  return hand;
}

Schedule best_of(const std::vector<Task>& tasks, const Roster& roster) {
  return schedules_until_in_time(tasks, roster, roster.size()).front();
}

int travel_between(const Roster& roster, const Task& a, const Task& b) {
  return a.site == b.site ? 0 : roster.travel_min;
}

bool is_there(const RosterHand& hand, int from_min, int to_min) {
  return hand.shifts.empty() ||
         std::any_of(hand.shifts.begin(), hand.shifts.end(), [&](const Shift& shift) {
           return shift.from_min <= from_min && to_min <= shift.to_min;
         });
}

/// Late minutes and last finish of the best possible schedule: every group of hands at every minute
/// for every task. Independent of how the program searches.
class EveryGroup {
 public:
  EveryGroup(const std::vector<Task>& tasks, const Roster& roster)
      : tasks_(tasks), roster_(roster), places_(tasks.size()) {}

  std::pair<int, int> best() {
    try_task(0, 0, 0);
    return best_;
  }

 private:
  static constexpr int horizon_min = 34;
  struct Where {
    unsigned who = 0;
    int start = 0;
    int end = 0;
  };

  void try_task(std::size_t i, int late, int finish) {
    if (std::pair(late, finish) >= best_) return;
    if (i == tasks_.size()) {
      best_ = {late, finish};
      return;
    }
    for (unsigned who = 1; who < 1U << roster_.hands.size(); ++who) {
      double pace = 0.0;
      int count = 0;
      bool able = true;
      for (std::size_t h = 0; h < roster_.hands.size(); ++h) {
        if ((who >> h & 1U) == 0) continue;
        pace += roster_.hands[h].pace;
        ++count;
        able = able && roster_.hands[h].can_do(tasks_[i]);
      }
      if (!able || count < tasks_[i].min_hands || count > tasks_[i].max_hands) continue;
      const int duration =
          std::max(1, static_cast<int>(std::ceil(tasks_[i].work_person_min / pace - 1e-9)));
      for (int start = tasks_[i].start_from_min; start + duration <= horizon_min; ++start) {
        if (fits(i, {who, start, start + duration})) {
          places_[i] = {who, start, start + duration};
          const int own = std::max(0, start + duration - *tasks_[i].end_by_min);
          try_task(i + 1, late + own, std::max(finish, start + duration));
        }
      }
    }
  }

  bool fits(std::size_t i, const Where& where) const {
    for (std::size_t h = 0; h < roster_.hands.size(); ++h) {
      if ((where.who >> h & 1U) != 0 && !is_there(roster_.hands[h], where.start, where.end)) {
        return false;
      }
    }
    for (const std::size_t before : tasks_[i].after) {
      if (where.start < places_[before].end) return false;
    }
    for (std::size_t j = 0; j < i; ++j) {
      if ((places_[j].who & where.who) == 0) continue;
      const int travel = travel_between(roster_, tasks_[i], tasks_[j]);
      if (where.start < places_[j].end + travel && places_[j].start < where.end + travel) {
        return false;
      }
    }
    return true;
  }

  const std::vector<Task>& tasks_;
  const Roster& roster_;
  std::vector<Where> places_;
  std::pair<int, int> best_{std::numeric_limits<int>::max(), std::numeric_limits<int>::max()};
};

class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int below(int count) { return static_cast<int>(engine_() % static_cast<unsigned>(count)); }
  int from(int low, int high) { return low + below(high - low + 1); }

 private:
  std::mt19937 engine_;
};

std::vector<Task> some_tasks(Dice& dice, int count, int sites, int crew) {
  std::vector<Task> tasks;
  for (int i = 0; i < count; ++i) {
    const int from = dice.below(10);
    Task task = work(dice.from(1, 9), from, from + dice.from(3, 12));
    task.min_hands = dice.below(4) == 0 ? std::min(2, crew) : 1;
    task.max_hands = task.min_hands + dice.below(2);
    task.site = static_cast<std::size_t>(dice.below(sites));
    if (dice.below(3) == 0) task.kind = TaskKind::cover;  // a helper's work too
    if (i > 0 && dice.below(3) == 0) task.after = {static_cast<std::size_t>(i - 1)};
    tasks.push_back(task);
  }
  return tasks;
}

Roster some_roster(Dice& dice, int size) {
  Roster roster;
  roster.travel_min = dice.below(5);
  for (int i = 0; i < size; ++i) {
    RosterHand hand = hand_of(dice.from(3, 20) / 10.0);
    hand.simple_work = i > 0 && dice.below(4) == 0;
    const int from = dice.below(8);
    if (dice.below(2) == 0) hand.shifts = {{from, from + dice.from(9, 14)}, {1440, far_min}};
    roster.hands.push_back(hand);
  }
  return roster;
}

void check_schedule(const std::vector<Task>& tasks, const Roster& roster,
                    const Schedule& schedule) {
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    const Assignment& at = schedule.assignments[i];
    double pace = 0.0;
    REQUIRE(static_cast<int>(at.who.size()) == at.hands);
    CHECK(at.hands >= tasks[i].min_hands);
    CHECK(at.hands <= tasks[i].max_hands);
    CHECK(at.start_min >= tasks[i].start_from_min);
    for (const std::size_t before : tasks[i].after) {
      CHECK(at.start_min >= schedule.assignments[before].end_min);
    }
    for (const int who : at.who) {
      const RosterHand& hand = roster.hands[static_cast<std::size_t>(who)];
      pace += hand.pace;
      CHECK(hand.can_do(tasks[i]));
      CHECK((tasks[i].any_hours || is_there(hand, at.start_min, at.end_min)));
    }
    // All of the work is done, and nobody stays a minute longer than it takes.
    const double done = (at.end_min - at.start_min) * pace;
    CHECK(done >= tasks[i].work_person_min - 1e-6);
    CHECK((done < tasks[i].work_person_min + pace || at.end_min - at.start_min == 1));
    for (std::size_t j = 0; j < i; ++j) {
      const Assignment& other = schedule.assignments[j];
      const bool shares = std::any_of(at.who.begin(), at.who.end(), [&](int who) {
        return std::count(other.who.begin(), other.who.end(), who) > 0;
      });
      const int travel = travel_between(roster, tasks[i], tasks[j]);
      CHECK((!shares || at.start_min >= other.end_min + travel ||
             other.start_min >= at.end_min + travel));
    }
  }
}

}  // namespace

TEST_CASE("what two do together follows their pace: worked by hand") {
  // 60 minutes of a usual hand's work. Ann does 1 in a minute, Ben a half, who comes at 12:
  // Ann alone 60 min; both from 12 on 60 / 1.5 = 40 min, so to 52.
  Roster roster;
  roster.hands = {hand_of(1.0), hand_of(0.5, {{12, far_min}})};
  Task both = work(60, 0, 60);
  both.max_hands = 2;
  Schedule day = best_of({both}, roster);
  CHECK(day.assignments[0].start_min == 12);
  CHECK(day.assignments[0].end_min == 52);
  CHECK(day.assignments[0].who == std::vector{0, 1});
  // Ben leaves at 50, before that would be done: Ann does it alone.
  roster.hands[1].shifts = {{12, 50}, {1440, far_min}};
  day = best_of({both}, roster);
  CHECK(day.assignments[0].start_min == 0);
  CHECK(day.assignments[0].end_min == 60);
  CHECK(day.assignments[0].who == std::vector{0});
}

TEST_CASE("one hand drives from one site to another: worked by hand") {
  // 30 min of work on each of two sites, 20 min apart: done at 30 and 80, due at 60, 20 late.
  Roster roster;
  roster.hands = {hand_of(1.0)};
  roster.travel_min = 20;
  std::vector<Task> tasks{work(30, 0, 60), work(30, 0, 60)};
  tasks[1].site = 1;
  const Schedule day = best_of(tasks, roster);
  CHECK(day.late_min == 20);
  CHECK(day.last_finish_min == 80);
  CHECK(day.proved);
}

TEST_CASE("no group of hands at any minute does better than the schedule of a few tasks") {
  Dice dice(11);
  int pressed = 0;
  for (int round = 0; round < 200; ++round) {
    const Roster roster = some_roster(dice, 2);
    std::vector<Task> tasks = some_tasks(dice, dice.from(1, 3), 2, 2);
    lend_to(tasks, roster);
    if (std::any_of(tasks.begin(), tasks.end(), [](const Task& t) { return t.any_hours; }))
      continue;
    const Schedule day = best_of(tasks, roster);
    const auto [late_min, last_finish_min] = EveryGroup(tasks, roster).best();
    if (late_min == std::numeric_limits<int>::max()) continue;  // not within the minutes tried
    CAPTURE(round);
    CHECK(day.late_min == late_min);
    CHECK(day.last_finish_min == last_finish_min);
    pressed += late_min > 0 ? 1 : 0;
  }
  CHECK(pressed > 40);
}

TEST_CASE("nobody is in two places, outside their hours, or idle on a task, whoever comes") {
  Dice dice(5);
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    const Roster roster = some_roster(dice, dice.from(1, 5));
    std::vector<Task> tasks = some_tasks(dice, dice.from(1, 14), dice.from(1, 3), roster.size());
    lend_to(tasks, roster);
    check_schedule(tasks, roster, best_of(tasks, roster));
  }
}

TEST_CASE("hands who are all alike are the count they are") {
  Dice dice(3);
  for (int round = 0; round < 200; ++round) {
    const int crew = dice.from(2, 5);
    const std::vector<Task> tasks = some_tasks(dice, dice.from(1, 12), 1, crew);
    Roster roster = usual_roster(crew);
    for (RosterHand& hand : roster.hands) hand.name += " by name";
    CHECK(roster.is_count());
    const Schedule named = best_of(tasks, roster);
    const Schedule counted = schedule(tasks, crew);
    CHECK(named.late_min == counted.late_min);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      CHECK(named.assignments[i].start_min == counted.assignments[i].start_min);
      CHECK(named.assignments[i].end_min == counted.assignments[i].end_min);
      CHECK(named.assignments[i].who == counted.assignments[i].who);
    }
    // One by one, with hours that hold every minute, the day is as good.
    roster.hands.front().shifts = {{-far_min, far_min}};
    REQUIRE(!roster.is_count());
    if (tasks.size() > 4) continue;  // more are searched, but not always to the end
    CHECK(best_of(tasks, roster).late_min == counted.late_min);
    CHECK(best_of(tasks, roster).last_finish_min == counted.last_finish_min);
  }
}

TEST_CASE("work that nobody's hours hold is planned without regard to them, and says so") {
  Roster roster;
  roster.hands = {hand_of(1.0, {{0, 30}, {roster_days * 1440, far_min}}),
                  hand_of(1.0, {{20, 60}, {roster_days * 1440, far_min}})};
  std::vector<Task> tasks{work(100, 0, 120), work(10, 0, 30)};
  tasks[1].min_hands = tasks[1].max_hands = 2;  // together only from 20 to 30
  CHECK(!lend_to(tasks, roster));
  CHECK(tasks[0].any_hours);
  CHECK(!tasks[1].any_hours);
  Task pair = work(30, 0, 60);  // 15 min by two: there are only ten
  pair.min_hands = pair.max_hands = 2;
  std::vector<Task> lent{pair};
  CHECK(lend_to(lent, roster));
  CHECK(lent[0].min_hands == 1);
}

TEST_CASE("what is due tonight does not wait for a second hand who comes tomorrow") {
  // One saws alone rather than let the slab crack overnight (common practice, no source).
  Roster roster;
  roster.hands = {hand_of(1.0, {{0, 480}, {1440, 1920}, {roster_days * 1440, far_min}}),
                  hand_of(1.0, {{0, 900}, {1440, 2340}, {roster_days * 1440, far_min}})};
  Task saw = work(60, 600, 720);
  saw.kind = TaskKind::saw;
  saw.min_hands = saw.max_hands = 2;
  std::vector<Task> tasks{saw};
  CHECK(lend_to(tasks, roster));
  CHECK(tasks[0].min_hands == 1);
  const Schedule day = best_of(tasks, roster);
  CHECK(day.late_min == 0);
  CHECK(day.assignments[0].who == std::vector{1});
  // Without a deadline it is worth waiting for both.
  saw.end_by_min.reset();
  tasks = {saw};
  CHECK(!lend_to(tasks, roster));
  CHECK(best_of(tasks, roster).assignments[0].start_min == 1440);
}

TEST_CASE("a helper does what takes no skill, a finisher the rest") {
  Roster roster;
  roster.hands = {hand_of(1.0), hand_of(1.0)};
  roster.hands[1].simple_work = true;
  std::vector<Task> tasks{work(30, 0, 30), work(30, 0, 30)};
  tasks[1].kind = TaskKind::cover;
  const Schedule day = best_of(tasks, roster);
  CHECK(day.late_min == 0);
  CHECK(day.assignments[0].who == std::vector{0});
  CHECK(day.assignments[1].who == std::vector{1});
}

TEST_CASE("who only says until when comes with the crew, on the days after too") {
  Job job = test::sample_job({});
  const LocalTime at_eight(job.pour.date, boost::posix_time::hours(8));
  job.pour.start = job.site.time_zone.utc_from_local(at_eight).utc;
  job.crew.arrive_before_min = 60.0;
  job.crew.hands = {Hand{"Ann", 1.0, std::nullopt, 15 * 60, false}};
  const RosterHand ann = roster_of(job).hands[0];
  CHECK(is_there(ann, -60, 420));
  CHECK_FALSE(is_there(ann, 430, 440));
  CHECK_FALSE(is_there(ann, 970, 980));  // just after midnight
  CHECK_FALSE(is_there(ann, 1370, 1380));
  CHECK(is_there(ann, 1380, 1380 + 480));  // 7:00 to 15:00 of the next day
}

TEST_CASE("hours of the clock become minutes of the pour, each day anew") {
  Job job = test::sample_job({});
  const LocalTime at_eight(job.pour.date, boost::posix_time::hours(8));
  job.pour.start = job.site.time_zone.utc_from_local(at_eight).utc;
  job.crew.finishers = 4;
  Hand early{"Ann", 1.0, 7 * 60, 15 * 60, false};
  Hand evening{"Ben", 0.5, 18 * 60, 2 * 60, true};
  Hand later{"Cal", 1.0, 10 * 60, std::nullopt, false};
  job.crew.hands = {early, evening, later};
  const Roster roster = roster_of(job);
  REQUIRE(roster.size() == 4);
  CHECK(roster.hands[0].name == "Ann");
  CHECK(roster.hands[3].name == "finisher 4");
  CHECK(roster.hands[3].shifts.empty());
  CHECK(is_there(roster.hands[0], -60, 420));
  CHECK(!is_there(roster.hands[0], -61, 420));
  CHECK(!is_there(roster.hands[0], -60, 421));
  CHECK(is_there(roster.hands[0], 1440 - 60, 1440 + 420));
  CHECK(is_there(roster.hands[1], 600, 1080));
  CHECK(!is_there(roster.hands[1], 599, 600));
  CHECK(!is_there(roster.hands[1], 1080, 1081));
  CHECK(!is_there(roster.hands[2], 119, 200));
  CHECK(is_there(roster.hands[2], 120, 5000));
  Hand leaves{"Dee", 1.0, std::nullopt, 12 * 60, false};
  job.crew.hands = {leaves};
  const Roster leaving = roster_of(job);
  CHECK(is_there(leaving.hands[0], -300, 240));
  CHECK(!is_there(leaving.hands[0], 0, 241));
}

}  // namespace slabtide
