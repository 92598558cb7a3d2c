#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <vector>

#include "slabtide/day/joints/saw_shift.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/day/practice/operation.h"
#include "slabtide/day/practice/practice.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/slab/stress/stress.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// Which events of a column are wanted.
struct ColumnQuestions {
  std::vector<Operation> operations;  ///< those on plastic concrete
  bool next_day = false;              ///< also walking on it, sawing, washing and sealing
  std::optional<StressCase> cracks;   ///< also by when a piece like this is to be cut
  Aggregate aggregate = Aggregate::unknown;
  std::vector<double> surface_at_s;  ///< instants at which the surface temperature is wanted
};

/// The events of a column, in seconds from the grid's start; absent if an event does not happen or
/// was not asked for.
struct ColumnEvents {
  double placed_s = 0.0;
  std::optional<double> sheen_gone_s;
  std::optional<double> initial_set_s;
  std::optional<double> final_set_s;
  std::array<CellWindow, operation_count> windows;  ///< for later operations only `opens_s`
  std::optional<double> stress_limit_s;
  std::optional<double> surface_limit_s;
  double min_young_surface_c = 0.0;  ///< the coldest surface while too weak for frost
  // What hands feel, whether or not the sheen is gone.
  std::optional<double> thumbprint_s;  ///< just soft enough for stamping
  std::optional<double> print_firm_s;  ///< too firm for stamping
  std::optional<double> edge_held_s;
  std::vector<double> surface_c;  ///< at ColumnQuestions::surface_at_s

  const CellWindow& window(Operation operation) const {
    return windows[static_cast<std::size_t>(operation)];
  }
  CellWindow& window(Operation operation) { return windows[static_cast<std::size_t>(operation)]; }
};

/// Finds the events in a column's history; its times are those of `weather`.
ColumnEvents events_of(const ColumnHistory& history, const MixModel& mix,
                       const ColumnQuestions& questions, const SiteWeather& weather,
                       const Practice& practice);

}  // namespace slabtide
