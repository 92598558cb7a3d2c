#include "schedule_search.h"

#include <algorithm>
#include <array>
#include <functional>
#include <limits>
#include <numeric>
#include <optional>
#include <queue>
#include <random>
#include <utility>

#include "dealer.h"
#include "exact_schedule.h"

namespace slabtide {

namespace {

// How hard to search. These are counts rather than times, so that the same tasks give the same
// schedule on any machine. Ours.
constexpr int max_lists = 5000;
/// With more tasks the work is limited too, to what this many lists of this length take.
constexpr std::size_t usual_tasks = 40;
constexpr int max_nodes = 20000;
constexpr std::size_t max_tasks_exactly = 10;

constexpr int no_deadline_min = std::numeric_limits<int>::max() / 2;

/// The task with the lowest value is placed first.
using Rule = std::function<int(const Task&)>;

int due_min(const Task& task) { return task.end_by_min.value_or(no_deadline_min); }

int latest_start_min(const Task& task) {
  const int by_end_min = due_min(task) - task.duration_min(task.max_hands);
  return std::min(by_end_min, task.start_by_min.value_or(no_deadline_min));
}

/// Of the tasks that may come next, the lowest by the rule; of equals the first.
std::vector<std::size_t> order_by(std::span<const Task> tasks, const Rule& rule) {
  using Next = std::pair<int, std::size_t>;
  std::priority_queue<Next, std::vector<Next>, std::greater<>> may_come;
  std::vector<std::vector<std::size_t>> followers(tasks.size());
  std::vector<std::size_t> waits_for(tasks.size());
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    for (const std::size_t before : tasks[i].after) followers[before].push_back(i);
    waits_for[i] = tasks[i].after.size();
    if (waits_for[i] == 0) may_come.emplace(rule(tasks[i]), i);
  }
  std::vector<std::size_t> order;
  while (!may_come.empty()) {
    order.push_back(may_come.top().second);
    may_come.pop();
    for (const std::size_t next : followers[order.back()]) {
      if (--waits_for[next] == 0) may_come.emplace(rule(tasks[next]), next);
    }
  }
  return order;
}

/// How much work the search may do over all lists (TaskPlacer::work). Placing one task means
/// searching a day that grows with the number of tasks, so this bounds the time taken and prevents
/// hours of search for a day of hundreds of tasks. It has no effect for up to `usual_tasks`.
std::size_t max_work(std::size_t tasks) {
  return max_lists * usual_tasks * usual_tasks / std::max(tasks, usual_tasks);
}

/// The search for one crew.
class Search {
 public:
  Search(std::span<const Task> tasks, const Roster& roster)
      : tasks_(tasks),
        roster_(roster),
        crew_(roster.size()),
        bound_(lower_bound(tasks, roster)),
        placer_(tasks, roster),
        dealer_(tasks),
        max_work_(max_work(tasks.size())) {}

  /// This crew can also work as a smaller crew would.
  void start_from(const FoundSchedule& smaller) {
    best_ = smaller.schedule;
    best_->crew = crew_;
    list_ = smaller.list;
  }

  void run() {
    try_rules();
    if (!reached_bound() && tasks_.size() <= max_tasks_exactly) search_whole();
    descend();
    while (late_beyond_help() && !is_spent()) {
      if (better_by_chance()) descend();
    }
  }

  Schedule take_schedule() {
    best_->proved = proved_ || reached_bound();
    return *best_;
  }
  TaskList take_list() { return std::move(list_); }
  std::size_t work() const { return placer_.work(); }

 private:
  bool reached_bound() const { return goal_of(*best_) == bound_; }
  bool is_spent() const { return lists_left_ <= 0 || placer_.work() >= max_work_; }
  /// True if there are late minutes that the bound does not explain, so that a longer search is
  /// worthwhile.
  bool late_beyond_help() const { return !proved_ && best_->late_min > bound_.late_min; }

  /// Assignment to individuals matters only if late minutes and last finish are equal.
  bool take(const TaskList& list, Schedule schedule) {
    schedule.idle_min = dealer_.idle_min(schedule);
    if (best_ && score_of(schedule) >= score_of(*best_)) return false;
    dealer_.name(schedule);
    best_ = std::move(schedule);
    list_ = list;
    return true;
  }

  bool try_list(const TaskList& list) {
    --lists_left_;
    auto schedule = placer_.times_of(list, best_ ? goal_of(*best_) : any_goal);
    return schedule && take(list, std::move(*schedule));
  }

  void try_rules() {
    const std::array<Rule, 3> rules{latest_start_min, due_min,
                                    [](const Task& task) { return task.start_from_min; }};
    for (const Rule& rule : rules) {
      TaskList list{order_by(tasks_, rule), std::vector<int>(tasks_.size(), 0)};
      try_list(list);
      for (std::size_t i = 0; i < tasks_.size(); ++i) list.hands[i] = tasks_[i].min_hands;
      try_list(list);
      for (std::size_t i = 0; i < tasks_.size(); ++i) {
        list.hands[i] = std::min(tasks_[i].max_hands, crew_);
      }
      try_list(list);
    }
  }

  void search_whole() {
    ExactSearch exact = search_exactly(tasks_, roster_, goal_of(*best_), max_nodes);
    proved_ = exact.whole;
    if (!exact.better) return;
    TaskList list;
    list.order.resize(tasks_.size());
    std::iota(list.order.begin(), list.order.end(), std::size_t{0});
    std::stable_sort(list.order.begin(), list.order.end(), [&](std::size_t a, std::size_t b) {
      return (*exact.better)[a].start_min < (*exact.better)[b].start_min;
    });
    for (const Assignment& assignment : *exact.better) list.hands.push_back(assignment.hands);
    best_.reset();
    take(list, summed(tasks_, crew_, std::move(*exact.better)));
  }

  /// The late tasks and, through them, the tasks that they wait for.
  std::vector<bool> worth_moving() const {
    std::vector<bool> worth(tasks_.size(), false);
    for (std::size_t i = tasks_.size(); i-- > 0;) {
      worth[i] = worth[i] || best_->assignments[i].late_min > 0;
      if (!worth[i]) continue;
      for (const std::size_t before : tasks_[i].after) worth[before] = true;
    }
    return worth;
  }

  bool waits_for(std::size_t task, std::size_t other) const {
    const auto& after = tasks_[task].after;
    return std::find(after.begin(), after.end(), other) != after.end();
  }

  void descend() {
    while (late_beyond_help() && !is_spent() && better_by_one_move()) {
    }
  }

  /// If no single move improves the list, two to four random moves at once may.
  bool better_by_chance() {
    TaskList list = list_;
    for (std::size_t moves = 2 + chance(3); moves > 0; --moves) {
      if (chance(2) == 0) {
        move_somewhere(list);
      } else {
        give_some_hands(list);
      }
    }
    return try_list(list);
  }

  void move_somewhere(TaskList& list) {
    std::size_t at = chance(list.order.size());
    const bool forward = chance(2) == 0;
    for (std::size_t steps = 1 + chance(list.order.size()); steps > 0; --steps) {
      if (forward ? at == 0 : at + 1 == list.order.size()) return;
      const std::size_t first = forward ? at - 1 : at;
      if (waits_for(list.order[first + 1], list.order[first])) return;
      std::swap(list.order[first], list.order[first + 1]);
      at = forward ? at - 1 : at + 1;
    }
  }

  void give_some_hands(TaskList& list) {
    const std::size_t task = chance(tasks_.size());
    const int min = tasks_[task].min_hands;
    const int max = std::min(tasks_[task].max_hands, crew_);
    list.hands[task] = min + static_cast<int>(chance(static_cast<std::size_t>(max - min) + 1));
  }

  /// A random number below `choices`, the same on every machine and in every run.
  std::size_t chance(std::size_t choices) { return engine_() % choices; }

  bool better_by_one_move() {
    const std::vector<bool> worth = worth_moving();
    for (std::size_t place = 0; place < list_.order.size(); ++place) {
      if (worth[list_.order[place]] && better_further_forward(place)) return true;
    }
    for (std::size_t place = 0; place < list_.order.size(); ++place) {
      if (better_further_back(place)) return true;
    }
    return better_with_other_hands();
  }

  /// The best list to change, where the last one stood: lists are long and moves are many.
  TaskList& copied_list() {
    changed_ = list_;
    return changed_;
  }

  bool better_further_forward(std::size_t place) {
    TaskList& list = copied_list();
    for (std::size_t to = place; to > 0 && !waits_for(list.order[to], list.order[to - 1]); --to) {
      std::swap(list.order[to], list.order[to - 1]);
      if (is_spent()) return false;
      if (try_list(list)) return true;
    }
    return false;
  }

  bool better_further_back(std::size_t place) {
    TaskList& list = copied_list();
    for (std::size_t to = place + 1;
         to < list.order.size() && !waits_for(list.order[to], list.order[to - 1]); ++to) {
      std::swap(list.order[to], list.order[to - 1]);
      if (is_spent()) return false;
      if (try_list(list)) return true;
    }
    return false;
  }

  bool better_with_other_hands() {
    for (std::size_t i = 0; i < tasks_.size(); ++i) {
      TaskList& list = copied_list();
      for (int hands = tasks_[i].min_hands; hands <= std::min(tasks_[i].max_hands, crew_);
           ++hands) {
        if (is_spent()) return false;
        list.hands[i] = hands;
        if (try_list(list)) return true;
      }
    }
    return false;
  }

  std::span<const Task> tasks_;
  const Roster& roster_;
  int crew_;
  Goal bound_;
  TaskPlacer placer_;
  Dealer dealer_;
  std::optional<Schedule> best_;
  TaskList list_;
  TaskList changed_;  ///< by one move
  bool proved_ = false;
  int lists_left_ = max_lists;
  std::size_t max_work_;
  std::minstd_rand engine_{1};
};

}  // namespace

FoundSchedule search_schedule(std::span<const Task> tasks, const Roster& roster,
                              const FoundSchedule* smaller) {
  Search search(tasks, roster);
  if (smaller != nullptr) search.start_from(*smaller);
  search.run();
  return {search.take_schedule(), search.take_list(), search.work()};
}

}  // namespace slabtide
