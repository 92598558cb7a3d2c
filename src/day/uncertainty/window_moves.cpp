#include "window_moves.h"

#include "slabtide/core/units.h"

namespace slabtide {

namespace {

std::optional<double> move_min(const std::optional<double>& planned_s,
                               const std::optional<double>& at_s) {
  if (!planned_s || !at_s) return std::nullopt;
  return (*at_s - *planned_s) / seconds_per_minute;
}

std::optional<double> between(const std::optional<double>& from, const std::optional<double>& to,
                              double fraction) {
  if (!from || !to) return std::nullopt;
  return *from + fraction * (*to - *from);
}

}  // namespace

std::optional<double> WindowMove::opens(double fraction) const {
  return between(first_opens, last_opens, fraction);
}

std::optional<double> WindowMove::closes(double fraction) const {
  return between(first_closes, last_closes, fraction);
}

std::optional<Operation> plastic_operation_of(TaskKind kind) {
  if (kind == TaskKind::strip_face) return Operation::strip;
  for (std::size_t i = 0; i <= static_cast<std::size_t>(Operation::tooled_joint); ++i) {
    const auto operation = static_cast<Operation>(i);
    if (operation != Operation::strip && task_kind_of(operation) == kind) return operation;
  }
  return std::nullopt;
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

}  // namespace slabtide
