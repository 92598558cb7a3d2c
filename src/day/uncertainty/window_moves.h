#pragma once

#include <optional>

#include "slabtide/day/plan/day_plan.h"
#include "slabtide/day/uncertainty/ensemble.h"

// How the windows of the crew's tasks move from the planned day to a sampled day.

namespace slabtide {

/// The operation on plastic concrete that a task does; empty for other tasks.
std::optional<Operation> plastic_operation_of(TaskKind kind);

/// How far the two ends of a part's window move from the planned day to another, in minutes.
struct WindowMove {
  std::optional<double> first_opens;
  std::optional<double> last_opens;
  std::optional<double> first_closes;
  std::optional<double> last_closes;

  /// The same for one position within the part; empty if the window does not happen.
  std::optional<double> opens(double fraction) const;
  std::optional<double> closes(double fraction) const;
};

WindowMove move_of(const DayEvents& planned, const DayEvents& day, const PartColumns& columns,
                   Operation operation);

}  // namespace slabtide
