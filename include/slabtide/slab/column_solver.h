#pragma once

#include "slabtide/slab/column.h"

namespace slabtide {

/// Where a column's heat came from and went, J/m2 since placing. Stored is the sum of the rest.
struct ColumnEnergy {
  double surface_j_m2 = 0.0;  ///< in through the surface
  double ground_j_m2 = 0.0;   ///< in from the fixed ground below
  double source_j_m2 = 0.0;   ///< released by hydration
  double stored_j_m2 = 0.0;   ///< more than at placing
};

struct ColumnSolution {
  ColumnHistory history;
  ColumnEnergy energy;
};

/// Solves one column. What `solve_columns` checks is taken as given.
ColumnSolution solve_column(const ColumnCase& column, const SiteWeather& weather,
                            const SolverSettings& settings);

}  // namespace slabtide
