#pragma once

#include <cstddef>
#include <vector>

#include "slabtide/day/pour/pour_run.h"

namespace slabtide {

/// A column and the area of the cells that it stands for.
struct PartColumn {
  std::size_t history = 0;  ///< index into PourRun::histories
  double area_m2 = 0.0;
};

/// The columns that stand for these cells of a zone, each once: a large slab has cells by the
/// thousand and columns by the dozen. In the order in which the cells ask for them.
std::vector<PartColumn> columns_of(const ZoneRun& zone, const std::vector<std::size_t>& cells);

}  // namespace slabtide
