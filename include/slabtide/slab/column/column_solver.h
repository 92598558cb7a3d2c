#pragma once

#include <cstddef>
#include <functional>
#include <span>

#include "slabtide/slab/column/column.h"

namespace slabtide {

/// Where a column's heat came from and went, J/m2 since placing. Stored is the sum of the rest.
struct ColumnEnergy {
  double surface_j_m2 = 0.0;  ///< in through the surface
  double ground_j_m2 = 0.0;   ///< in from the fixed ground below
  double source_j_m2 = 0.0;   ///< released by hydration
  double stored_j_m2 = 0.0;   ///< more than at placing
};

/// What came of a column, and where its heat went.
struct ColumnSolution {
  ColumnHistory history;
  ColumnEnergy energy;
};

/// Sees a column's history, which is gone after the call.
using VisitColumn = std::function<void(std::size_t column, const ColumnHistory& history)>;

/// As `solve_columns`, for many columns of which only a few numbers are wanted: no more than a
/// few histories are held at a time. `visit` is called from several threads at once, once for
/// each column, in no order.
void visit_columns(std::span<const ColumnCase> cases, const SiteWeather& weather,
                   const SolverSettings& settings, const VisitColumn& visit);

}  // namespace slabtide
