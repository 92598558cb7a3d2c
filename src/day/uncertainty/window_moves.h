#pragma once

#include <optional>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

// How the windows of the crew's tasks move from the planned day to one that may come.

namespace slabtide {

/// The operation on plastic concrete that a task does; empty for other tasks.
std::optional<Operation> plastic_operation_of(TaskKind kind);

/// The columns a task's concrete is known by. `plan` is the one the ensemble was drawn for: for
/// a part it does not have, those of the whole zone; empty for a zone it does not have.
std::optional<PartColumns> columns_of(const Task& task, const DayPlan& plan,
                                      const Ensemble& ensemble);

/// How far the two ends of a part's window move from the planned day to another, minutes.
struct WindowMove {
  std::optional<double> first_opens;
  std::optional<double> last_opens;
  std::optional<double> first_closes;
  std::optional<double> last_closes;

  /// Of a piece's own stretch of the part; empty where the window does not come.
  std::optional<double> opens(double fraction) const;
  std::optional<double> closes(double fraction) const;
};

WindowMove move_of(const DayEvents& planned, const DayEvents& day, const PartColumns& columns,
                   Operation operation);

}  // namespace slabtide
