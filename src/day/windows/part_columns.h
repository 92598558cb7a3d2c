#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/pour/pour_run.h"
#include "slabtide/day/practice/practice.h"

namespace slabtide {

/// A column and the area of the cells that it stands for.
struct PartColumn {
  std::size_t history = 0;  ///< index into PourRun::histories
  double area_m2 = 0.0;
};

/// The columns that stand for these cells of a zone, each once: a large slab has cells by the
/// thousand and columns by the dozen. In the order in which the cells ask for them.
std::vector<PartColumn> columns_of(const ZoneRun& zone, const std::vector<std::size_t>& cells);

/// At least the first tenth of these cells is too stiff for the work as it is placed: it set on the
/// way. What it would have bled by then is beside the point.
bool stiff_when_placed(const std::vector<PartColumn>& columns, const PourRun& run,
                       const ResistanceWindow& window, const CellRules& rules);

}  // namespace slabtide
