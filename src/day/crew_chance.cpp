#include "crew_chance.h"

#include <algorithm>

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// The operation on plastic concrete that a task does; empty for other tasks.
std::optional<Operation> operation_of(TaskKind kind) {
  if (kind == TaskKind::strip_face) return Operation::strip;
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const auto operation = static_cast<Operation>(i);
    if (operation != Operation::strip && task_kind_of(operation) == kind) return operation;
  }
  return std::nullopt;
}

/// The columns a task's concrete is known by.
std::optional<PartColumns> columns_of(const Task& task, const DayPlan& plan,
                                      const Ensemble& ensemble) {
  for (std::size_t i = 0; i < plan.zones.size(); ++i) {
    const ZonePlan& zone = plan.zones[i];
    const ZoneColumns& columns = ensemble.zones[i];
    if (zone.name != task.zone) continue;
    if (task.kind == TaskKind::strip_face) {
      for (std::size_t k = 0; k < zone.faces.size(); ++k) {
        if (task.part.empty() || zone.faces[k].name == task.part) {
          return PartColumns{columns.faces[k], columns.faces[k]};
        }
      }
      return std::nullopt;
    }
    if (task.part.empty()) return columns.whole;
    if (zone.border && zone.border->name == task.part) return columns.border;
    for (std::size_t k = 0; k < zone.parts.size(); ++k) {
      if (zone.parts[k].name == task.part) return columns.parts[k];
    }
  }
  return std::nullopt;
}

/// How far the two ends of a part's window move from the planned day to another, minutes.
struct WindowMove {
  std::optional<double> first_opens;
  std::optional<double> last_opens;
  std::optional<double> first_closes;
  std::optional<double> last_closes;
};

std::optional<double> move_min(const std::optional<double>& planned_s,
                               const std::optional<double>& at_s) {
  if (!planned_s || !at_s) return std::nullopt;
  return (*at_s - *planned_s) / seconds_per_minute;
}

WindowMove move_of(const DayEvents& planned, const DayEvents& day, const PartColumns& columns,
                   Operation operation) {
  const auto window = [operation](const DayEvents& events, std::size_t column) {
    return events[column].window(operation);
  };
  const CellWindow first = window(planned, columns.first);
  const CellWindow last = window(planned, columns.last);
  const CellWindow first_came = window(day, columns.first);
  const CellWindow last_came = window(day, columns.last);
  return {move_min(first.opens_s, first_came.opens_s), move_min(last.opens_s, last_came.opens_s),
          move_min(first.closes_s, first_came.closes_s),
          move_min(last.closes_s, last_came.closes_s)};
}

double between(double from, double to, double share) { return from + share * (to - from); }

/// Whether the task is late with its window moved, started as planned or once it can be.
bool is_late(const Task& task, const Assignment& at, const WindowMove& move) {
  constexpr double rounding_min = 0.5;  // the plan's hours are whole minutes
  if (!move.first_opens || !move.last_opens) return true;
  const double from = static_cast<double>(task.piece - 1) / task.pieces;
  const double to = static_cast<double>(task.piece) / task.pieces;
  const auto opens = [&move](double share) {
    return between(*move.first_opens, *move.last_opens, share);
  };
  const double start_min = std::max<double>(at.start_min, task.start_from_min + opens(from));
  const double end_min =
      std::max(start_min + at.end_min - at.start_min, task.end_from_min + opens(to));
  if (!move.first_closes || !move.last_closes) return false;
  const auto closes = [&move](double share) {
    return between(*move.first_closes, *move.last_closes, share);
  };
  return (task.start_by_min && start_min > *task.start_by_min + closes(from) + rounding_min) ||
         (task.end_by_min && end_min > *task.end_by_min + closes(to) + rounding_min);
}

std::optional<double> late_chance(const Task& task, const Assignment& at, const DayPlan& plan,
                                  const Ensemble& ensemble) {
  const auto operation = operation_of(task.kind);
  const auto columns = columns_of(task, plan, ensemble);
  if (!operation || !columns) return std::nullopt;
  double chance = 0.0;
  for (std::size_t i = 0; i < ensemble.days.size(); ++i) {
    const WindowMove move = move_of(ensemble.planned, ensemble.days[i], *columns, *operation);
    if (is_late(task, at, move)) chance += ensemble.weights[i];
  }
  return chance;
}

}  // namespace

std::vector<std::optional<double>> late_chances(const DayPlan& plan, const Ensemble& ensemble) {
  std::vector<std::optional<double>> chances;
  for (std::size_t i = 0; i < plan.crew.tasks.size(); ++i) {
    chances.push_back(
        late_chance(plan.crew.tasks[i], plan.crew.schedule.assignments[i], plan, ensemble));
  }
  return chances;
}

}  // namespace slabtide
