#include "support/column_in_doubles.h"

#include <array>
#include <span>

#include "slab/column/column_lanes-inl.h"

namespace slabtide::test {

ColumnSolution solve_in_doubles(const ColumnCase& column, const SiteWeather& weather,
                                const SolverSettings& settings) {
  const std::array<const ColumnCase*, 1> cases{&column};
  ColumnSolution solution;
  ColumnWorkspace workspace;
  const ColumnBatch batch(weather, settings, cases);
  HWY_NAMESPACE::ColumnLanes<double>(batch, cases, std::span(&solution, 1), workspace).run();
  if (settings.keep_profile) solution.profile_depth_m = batch.modes_of(column).profile_depth_m;
  return solution;
}

}  // namespace slabtide::test
