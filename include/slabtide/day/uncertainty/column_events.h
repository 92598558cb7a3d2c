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

/// What is asked of a column.
struct ColumnQuestions {
  std::vector<Operation> operations;  ///< the plastic ones
  bool next_day = false;              ///< walking on it, washing and sealing
  std::optional<StressCase> sawn;     ///< and the saw, for a piece like this
  Aggregate aggregate = Aggregate::unknown;
  std::vector<double> surface_at_s;  ///< instants the surface's temperature is wanted at
};

/// What happens to a column and when, seconds from the grid's start; absent where it does not
/// come, or was not asked.
struct ColumnEvents {
  double placed_s = 0.0;
  std::optional<double> sheen_gone_s;
  std::optional<double> initial_set_s;
  std::optional<double> final_set_s;
  std::array<CellWindow, operation_count> windows;  ///< of later operations only `opens_s`
  std::optional<double> stress_limit_s;
  std::optional<double> surface_limit_s;
  // What hands feel, whether or not the sheen is gone.
  std::optional<double> thumbprint_s;  ///< soft enough for a stamp, just
  std::optional<double> print_firm_s;  ///< takes a stamp no more
  std::optional<double> edge_held_s;
  std::vector<double> surface_c;  ///< as ColumnQuestions::surface_at_s

  const CellWindow& window(Operation operation) const {
    return windows[static_cast<std::size_t>(operation)];
  }
  CellWindow& window(Operation operation) { return windows[static_cast<std::size_t>(operation)]; }
};

/// Reads the events off a column's history; its times are those of `weather`.
ColumnEvents events_of(const ColumnHistory& history, const MixModel& mix,
                       const ColumnQuestions& questions, const SiteWeather& weather,
                       const Practice& practice);

}  // namespace slabtide
