#include "slabtide/slab/column/column_solver.h"

#include <array>
#include <span>

#include "slab/column/column_core.h"

namespace slabtide {

ColumnSolution solve_column(const ColumnCase& column, const SiteWeather& weather,
                            const SolverSettings& settings) {
  const std::array cases{&column};
  ColumnSolution solution;
  ColumnWorkspace workspace;
  solve_side_by_side(ColumnBatch(weather, settings), cases, std::span(&solution, 1), workspace);
  return solution;
}

}  // namespace slabtide
