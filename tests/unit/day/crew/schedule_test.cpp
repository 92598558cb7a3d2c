#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <limits>
#include <random>
#include <utility>

#include "day/crew/schedule_search.h"
#include "day/crew/task_list.h"
#include "slabtide/day/crew/schedule.h"

namespace slabtide {

namespace {

Task task_of(double work_person_min, int from_min, int by_min) {
  Task task;
  task.work_person_min = work_person_min;
  task.start_from_min = task.end_from_min = from_min;
  task.end_by_min = by_min;
  return task;
}

/// Late minutes and last finish of the best possible schedule, found by trying every start minute
/// and every number of workers for every task. Independent of how the program searches.
class EveryStart {
 public:
  EveryStart(const std::vector<Task>& tasks, int crew)
      : tasks_(tasks), crew_(crew), ends_(tasks.size()) {}

  std::pair<int, int> best() {
    try_task(0, 0, 0);
    return best_;
  }

 private:
  static constexpr int horizon_min = 26;

  void try_task(std::size_t i, int late, int finish) {
    if (std::pair(late, finish) >= best_) return;
    if (i == tasks_.size()) {
      best_ = {late, finish};
      return;
    }
    for (int hands = tasks_[i].min_hands; hands <= std::min(tasks_[i].max_hands, crew_); ++hands) {
      for (int start = earliest(i, hands); start < horizon_min; ++start) {
        try_at(i, hands, start, late, finish);
      }
    }
  }

  int earliest(std::size_t i, int hands) const {
    int from = tasks_[i].start_from_min;
    from = std::max(from, tasks_[i].end_from_min - tasks_[i].duration_min(hands));
    for (const std::size_t before : tasks_[i].after) {
      from = std::max(from, ends_[before] + tasks_[i].wait_after_min);
    }
    return from;
  }

  void try_at(std::size_t i, int hands, int start, int late, int finish) {
    const int end = start + tasks_[i].duration_min(hands);
    if (end > horizon_min) return;
    for (int t = start; t < end; ++t) {
      if (busy_[static_cast<std::size_t>(t)] + hands > crew_) return;
    }
    for (int t = start; t < end; ++t) busy_[static_cast<std::size_t>(t)] += hands;
    ends_[i] = end;
    int this_late = tasks_[i].end_by_min ? std::max(0, end - *tasks_[i].end_by_min) : 0;
    if (tasks_[i].start_by_min) this_late = std::max(this_late, start - *tasks_[i].start_by_min);
    try_task(i + 1, late + this_late, tasks_[i].later ? finish : std::max(finish, end));
    for (int t = start; t < end; ++t) busy_[static_cast<std::size_t>(t)] -= hands;
  }

  const std::vector<Task>& tasks_;
  int crew_;
  std::vector<int> ends_;
  std::array<int, horizon_min> busy_{};
  std::pair<int, int> best_{std::numeric_limits<int>::max(), std::numeric_limits<int>::max()};
};

/// A few small tasks that compete with each other. Made from the raw engine, whose output the
/// standard defines; that of the distributions it does not.
std::vector<Task> small_day(std::mt19937& engine) {
  const auto sample = [&engine](int min, int max) {
    return min + static_cast<int>(engine() % static_cast<unsigned>(max - min + 1));
  };
  std::vector<Task> tasks(static_cast<std::size_t>(sample(2, 4)));
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    Task& task = tasks[i];
    task.work_person_min = sample(1, 6);
    task.min_hands = sample(1, 2);
    task.max_hands = sample(task.min_hands, 3);
    task.start_from_min = sample(0, 6);
    task.end_from_min = task.start_from_min + sample(0, 3);
    if (sample(0, 3) > 0) task.end_by_min = task.end_from_min + sample(0, 5);
    if (sample(0, 2) == 0) task.start_by_min = task.start_from_min + sample(0, 4);
    task.later = sample(0, 4) == 0;
    if (i > 0 && sample(0, 2) == 0)
      task.after.push_back(static_cast<std::size_t>(sample(0, static_cast<int>(i) - 1)));
    if (!task.after.empty()) task.wait_after_min = sample(0, 2);
  }
  return tasks;
}

/// An order in which nothing comes before what it waits for.
std::vector<std::size_t> some_order(const std::vector<Task>& tasks, std::mt19937& engine) {
  std::vector<std::size_t> order;
  std::vector<bool> listed(tasks.size(), false);
  while (order.size() < tasks.size()) {
    const std::size_t task = engine() % tasks.size();
    const auto& after = tasks[task].after;
    const bool may_come =
        std::all_of(after.begin(), after.end(), [&](std::size_t before) { return listed[before]; });
    if (listed[task] || !may_come) continue;
    listed[task] = true;
    order.push_back(task);
  }
  return order;
}

}  // namespace

TEST_CASE("one task starts when it may and ends by its work") {
  const Schedule day = schedule(std::vector{task_of(30, 10, 50)}, 1);
  CHECK(day.assignments[0].start_min == 10);
  CHECK(day.assignments[0].end_min == 40);
  CHECK(day.late_min == 0);
  CHECK(day.last_finish_min == 40);
  CHECK(day.assignments[0].who == std::vector{0});
  CHECK(day.proved);
}

TEST_CASE("more hands end a task sooner, as many as are of use") {
  Task task = task_of(30, 0, 50);
  task.max_hands = 2;
  CHECK(schedule(std::vector{task}, 1).last_finish_min == 30);
  CHECK(schedule(std::vector{task}, 2).last_finish_min == 15);
  CHECK(schedule(std::vector{task}, 3).last_finish_min == 15);
}

TEST_CASE("what presses comes first, though the other could begin sooner") {
  // By hand: starting the long one at 0 would occupy the only finisher until 40, making the short
  // one 20 minutes late; waiting for the short one costs nothing.
  const std::vector tasks{task_of(40, 0, 200), task_of(10, 10, 20)};
  const Schedule day = schedule(tasks, 1);
  CHECK(day.late_min == 0);
  CHECK(day.assignments[1].start_min == 10);
  CHECK(day.assignments[0].start_min == 20);
  CHECK(day.last_finish_min == 60);
}

TEST_CASE("what cannot be helped is counted") {
  const std::vector tasks{task_of(30, 0, 30), task_of(30, 0, 30)};
  CHECK(schedule(tasks, 1).late_min == 30);
  CHECK(schedule(tasks, 2).late_min == 0);
  // Too stiff before it may begin, so late with any crew.
  Task task = task_of(10, 20, 25);
  task.start_by_min = 15;
  CHECK(schedule(std::vector{task}, 5).late_min == 5);
}

TEST_CASE("work waits for its last tenth, and is drawn out rather than begun too late") {
  Task task = task_of(10, 0, 60);
  task.end_from_min = 30;
  Schedule day = schedule(std::vector{task}, 1);
  CHECK(day.assignments[0].start_min == 20);
  CHECK(day.assignments[0].end_min == 30);
  task.start_by_min = 5;  // the first of it would be too stiff by 20
  day = schedule(std::vector{task}, 1);
  CHECK(day.assignments[0].start_min == 5);
  CHECK(day.assignments[0].end_min == 30);
  CHECK(day.late_min == 0);
}

TEST_CASE("a task waits for what comes before, and as long as it must") {
  Task first = task_of(30, 0, 100);
  Task second = task_of(10, 0, 100);
  second.after = {0};
  second.wait_after_min = 15;
  const Schedule day = schedule(std::vector{first, second}, 2);
  CHECK(day.assignments[1].start_min == 45);
  CHECK(day.idle_min == 15);
  CHECK(day.assignments[0].who == day.assignments[1].who);
}

TEST_CASE("small days are scheduled as well as they can be: every schedule tried") {
  std::mt19937 engine(20260514);
  int pressed = 0;
  constexpr int days = 300;
  for (int i = 0; i < days; ++i) {
    const std::vector<Task> tasks = small_day(engine);
    const int crew = min_crew(tasks) + static_cast<int>(engine() % 2);
    CAPTURE(i);
    const Schedule day = schedule(tasks, crew);
    const auto [late_min, last_finish_min] = EveryStart(tasks, crew).best();
    CHECK(day.proved);
    CHECK(day.late_min == late_min);
    CHECK(day.last_finish_min == last_finish_min);
    pressed += late_min > 0 ? 1 : 0;
  }
  // The days are hard enough to distinguish a good search from a bad one.
  CHECK(pressed > days / 4);
}

TEST_CASE(
    "a list placed after others comes out as it does alone, and is given up only when worse") {
  std::mt19937 engine(7);
  for (int day = 0; day < 100; ++day) {
    const std::vector<Task> tasks = small_day(engine);
    const int crew = min_crew(tasks) + 1;
    const Roster roster = usual_roster(crew);
    TaskPlacer placer(tasks, roster);
    for (int round = 0; round < 20; ++round) {
      TaskList list{some_order(tasks, engine), {}};
      for (const Task& task : tasks) list.hands.push_back(engine() % 2 == 0 ? 0 : task.min_hands);
      const Schedule alone = times_of(tasks, roster, list);
      // Often as late as this list is, so that the last finish tells.
      const int worst_late_min =
          engine() % 2 == 0 ? alone.late_min : static_cast<int>(engine() % 20);
      const Goal worst{worst_late_min, alone.last_finish_min - 2 + static_cast<int>(engine() % 5)};
      const auto placed = placer.times_of(list, worst);
      CHECK(placed.has_value() == (goal_of(alone) <= worst));
      if (!placed) continue;
      for (std::size_t i = 0; i < tasks.size(); ++i) {
        CHECK(placed->assignments[i].start_min == alone.assignments[i].start_min);
        CHECK(placed->assignments[i].end_min == alone.assignments[i].end_min);
      }
    }
  }
}

TEST_CASE("the work of a search does not grow with the square of a day that is late throughout") {
  for (const std::size_t count : {40U, 80U, 160U}) {
    std::vector<Task> tasks;
    for (std::size_t i = 0; i < count; ++i) {
      tasks.push_back(task_of(20 + static_cast<double>(i % 7), static_cast<int>(i % 11), 60));
    }
    const std::size_t work = search_schedule(tasks, usual_roster(2), nullptr).work;
    CAPTURE(count);
    CHECK(work > 1000);
    // 5,000 lists of 40; placing a task searches a day that grows with the number of tasks.
    CHECK(work <= 5000 * 40 * 40 / count + count);
  }
}

/// Usual hands of whom each, or every second, is there for twenty minutes a day.
Roster some_for_minutes(int hands, std::size_t every) {
  Roster roster = usual_roster(hands);
  for (std::size_t hand = 0; hand < roster.hands.size(); hand += every) {
    std::vector<Shift>& shifts = roster.hands[hand].shifts;
    for (int day = 0; day < roster_days; ++day) {
      shifts.push_back({1440 * day + 600, 1440 * day + 620});
    }
    shifts.push_back({1440 * roster_days, std::numeric_limits<int>::max()});
  }
  return roster;
}

TEST_CASE("a task for which hands are looked at often is more work to place") {
  const std::vector<Task> tasks(20, task_of(200, 0, 60));
  TaskList list{{}, std::vector<int>(tasks.size(), 0)};
  for (std::size_t i = 0; i < tasks.size(); ++i) list.order.push_back(i);
  Roster few = usual_roster(4);
  few.hands.front().pace = 0.9;
  TaskPlacer usual(tasks, few);
  usual.times_of(list, any_goal);
  CHECK(usual.work() == usual.placings());
  const Roster for_minutes = some_for_minutes(8, 1);
  TaskPlacer placer(tasks, for_minutes);
  placer.times_of(list, any_goal);
  CHECK(placer.work() > 3 * placer.placings());
}

TEST_CASE("the work of a search does not grow with hands who are not alike, or there for minutes") {
  std::vector<Task> tasks;
  for (std::size_t i = 0; i < 80; ++i) {
    tasks.push_back(task_of(200 + static_cast<double>(i % 7), static_cast<int>(i % 11), 60));
  }
  for (const int hands : {8, 16, 32}) {
    const std::size_t work = search_schedule(tasks, some_for_minutes(hands, 2), nullptr).work;
    CAPTURE(hands);
    CHECK(work > 1000);
    // Half of what 40 tasks may take; what a list has begun it ends.
    CHECK(work <= 5000 * 40 / 2 + 80 * 64);
  }
}

TEST_CASE("tasks that cannot be are refused") {
  CHECK_THROWS_AS(schedule(std::vector{task_of(0, 0, 10)}, 1), std::invalid_argument);
  CHECK_THROWS_AS(
      schedule(std::vector{task_of(std::numeric_limits<double>::quiet_NaN(), 0, 10)}, 1),
      std::invalid_argument);
  Task pair = task_of(10, 0, 10);
  pair.min_hands = pair.max_hands = 2;
  CHECK_THROWS_AS(schedule(std::vector{pair}, 1), std::invalid_argument);
  Task circle = task_of(10, 0, 10);
  circle.after = {0};
  CHECK_THROWS_AS(schedule(std::vector{circle}, 1), std::invalid_argument);
  CHECK(schedule({}, 3).late_min == 0);
}

TEST_CASE("a list places anew only what follows where it parts from the one before") {
  std::vector<Task> tasks;
  for (int i = 0; i < 6; ++i) tasks.push_back(task_of(10, 0, 200));
  const Roster roster = usual_roster(1);
  TaskPlacer placer(tasks, roster);
  TaskList list{{0, 1, 2, 3, 4, 5}, std::vector<int>(6, 0)};
  placer.times_of(list, any_goal);
  CHECK(placer.placings() == 6);
  placer.times_of(list, any_goal);
  CHECK(placer.placings() == 6);
  std::swap(list.order[4], list.order[5]);
  placer.times_of(list, any_goal);
  CHECK(placer.placings() == 8);
  list.hands[3] = 1;  // as many as it had, but asked for
  placer.times_of(list, any_goal);
  CHECK(placer.placings() == 11);
}

}  // namespace slabtide
