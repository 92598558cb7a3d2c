#include "late_days.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <set>

#include "day/crew/task_list.h"
#include "window_moves.h"

namespace slabtide {

namespace {

constexpr double bad_day_fraction = 0.9;

/// The schedule as a list: tasks in order of start, with their workers.
TaskList list_of(const Schedule& schedule) {
  TaskList list;
  list.order.resize(schedule.assignments.size());
  std::iota(list.order.begin(), list.order.end(), std::size_t{0});
  std::stable_sort(list.order.begin(), list.order.end(), [&](std::size_t a, std::size_t b) {
    return schedule.assignments[a].start_min < schedule.assignments[b].start_min;
  });
  for (const Assignment& at : schedule.assignments) list.hands.push_back(at.hands);
  return list;
}

/// The columns that a task's windows move with; empty for tasks that do not follow the setting.
struct Mover {
  std::optional<Operation> operation;
  PartColumns columns;
};

int moved(int planned_min, double by_min) {
  return planned_min + static_cast<int>(std::lround(by_min));
}

/// False if the window does not happen: the task then stays where it was.
bool move(Task& task, const WindowMove& by) {
  const double from = static_cast<double>(task.piece - 1) / task.pieces;
  const double to = static_cast<double>(task.piece) / task.pieces;
  const auto opens_from = by.opens(from);
  const auto opens_to = by.opens(to);
  if (!opens_from || !opens_to) return false;
  task.start_from_min = moved(task.start_from_min, *opens_from);
  task.end_from_min = std::max(moved(task.end_from_min, *opens_to), task.start_from_min);
  const auto closes_from = by.closes(from);
  const auto closes_to = by.closes(to);
  if (task.start_by_min && closes_from) task.start_by_min = moved(*task.start_by_min, *closes_from);
  if (task.end_by_min && closes_to) task.end_by_min = moved(*task.end_by_min, *closes_to);
  return true;
}

/// The outcome of a crew's tasks on one day.
struct WorkedDay {
  Schedule schedule;
  std::vector<bool> missed;  ///< one entry per task
  std::vector<bool> lost;    ///< likewise
};

/// A crew that works its plan on each of the days.
class WorkedDays {
 public:
  WorkedDays(const CrewPlan& crew, const DayPlan& sampled_for, const Ensemble& ensemble)
      : crew_(crew), ensemble_(ensemble), list_(list_of(crew.schedule)) {
    for (const Task& task : crew.tasks) {
      Mover mover;
      if (task.place) {
        const std::size_t zone = task.place->zone;
        mover.operation = plastic_operation_of(task.kind);
        mover.columns =
            columns_of(task.place->part, sampled_for.zones.at(zone), ensemble.zones.at(zone));
      }
      movers_.push_back(mover);
    }
  }

  bool follows_setting(std::size_t task) const { return movers_[task].operation.has_value(); }

  WorkedDay on(std::size_t day) const {
    std::vector<Task> tasks = crew_.tasks;
    WorkedDay worked;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      worked.missed.push_back(follows_setting(i) && !move(tasks[i], move_on(day, i)));
    }
    worked.lost = worked.missed;
    worked.schedule = times_of(tasks, crew_.roster, list_);
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      const int late_min = worked.schedule.assignments[i].late_min;
      if (late_min > 0) worked.missed[i] = true;
      if (late_min > finish_lost_min) worked.lost[i] = true;
    }
    return worked;
  }

 private:
  WindowMove move_on(std::size_t day, std::size_t task) const {
    const Mover& mover = movers_[task];
    return move_of(ensemble_.planned, ensemble_.days[day], mover.columns, *mover.operation);
  }

  const CrewPlan& crew_;
  const Ensemble& ensemble_;
  std::vector<Mover> movers_;
  TaskList list_;
};

/// The zones whose finish is lost on that day.
std::set<std::size_t> lost_zones(const WorkedDay& worked, const std::vector<Task>& tasks) {
  std::set<std::size_t> lost;
  for (std::size_t i = 0; i < tasks.size(); ++i) {
    if (!worked.lost[i] || !makes_the_finish(tasks[i].kind)) continue;
    if (tasks[i].place) lost.insert(tasks[i].place->zone);
  }
  return lost;
}

/// The minutes that are not exceeded by `fraction` of the weight.
double minutes_at(std::vector<std::pair<int, double>> late, double fraction) {
  std::sort(late.begin(), late.end());
  double weight = 0.0;
  for (const auto& [minutes, own] : late) {
    weight += own;
    if (weight >= fraction) return minutes;
  }
  return late.empty() ? 0.0 : late.back().first;
}

}  // namespace

LateDays late_days(const CrewPlan& crew, const DayPlan& sampled_for, const Ensemble& ensemble) {
  const WorkedDays days(crew, sampled_for, ensemble);
  LateDays result;
  for (std::size_t i = 0; i < crew.tasks.size(); ++i) {
    result.task_chances.push_back(days.follows_setting(i) ? std::optional(0.0) : std::nullopt);
  }
  result.lost_chances = result.task_chances;
  result.zone_lost_fractions.assign(sampled_for.zones.size(), 0.0);
  std::vector<std::pair<int, double>> late;
  for (std::size_t day = 0; day < ensemble.days.size(); ++day) {
    const WorkedDay worked = days.on(day);
    const double weight = ensemble.weights[day];
    result.expected_min += weight * worked.schedule.late_min;
    late.emplace_back(worked.schedule.late_min, weight);
    const std::set<std::size_t> lost = lost_zones(worked, crew.tasks);
    if (!lost.empty()) result.finish_lost_fraction += weight;
    for (const std::size_t zone : lost) result.zone_lost_fractions.at(zone) += weight;
    for (std::size_t i = 0; i < worked.missed.size(); ++i) {
      if (worked.missed[i] && result.task_chances[i]) *result.task_chances[i] += weight;
      if (worked.lost[i] && result.lost_chances[i]) *result.lost_chances[i] += weight;
    }
  }
  result.bad_day_min = minutes_at(std::move(late), bad_day_fraction);
  return result;
}

namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();

void put_right(double& many, double few, double few_solved, double max) {
  many = std::clamp(many + few_solved - few, 0.0, max);
}

void put_right(std::vector<std::optional<double>>& many,
               const std::vector<std::optional<double>>& few,
               const std::vector<std::optional<double>>& few_solved) {
  for (std::size_t i = 0; i < many.size(); ++i) {
    if (many[i] && few[i] && few_solved[i]) put_right(*many[i], *few[i], *few_solved[i], 1.0);
  }
}

}  // namespace

LateDays put_right(LateDays many, const LateDays& few, const LateDays& few_solved) {
  put_right(many.expected_min, few.expected_min, few_solved.expected_min, no_limit);
  put_right(many.bad_day_min, few.bad_day_min, few_solved.bad_day_min, no_limit);
  put_right(many.task_chances, few.task_chances, few_solved.task_chances);
  put_right(many.lost_chances, few.lost_chances, few_solved.lost_chances);
  put_right(many.finish_lost_fraction, few.finish_lost_fraction, few_solved.finish_lost_fraction,
            1.0);
  for (std::size_t i = 0; i < many.zone_lost_fractions.size(); ++i) {
    put_right(many.zone_lost_fractions[i], few.zone_lost_fractions[i],
              few_solved.zone_lost_fractions[i], 1.0);
  }
  return many;
}

}  // namespace slabtide
