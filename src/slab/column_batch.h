#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/slab/column.h"
#include "slabtide/slab/column_solver.h"

namespace slabtide {

/// Air, vapour pressure, wind at the slab and emissivity of the sky at one instant, beside each
/// other since they are read together.
using SharedWeather = std::array<double, 4>;

/// What all columns that are solved together share.
struct ColumnBatch {
  ColumnBatch(const SiteWeather& weather, const SolverSettings& settings);

  const SiteWeather& weather;
  const SolverSettings& settings;
  double end_s;
  std::vector<SharedWeather> shared;  ///< one an instant of the grid
};

/// More lanes than any instruction set has in two vectors of doubles.
inline constexpr std::size_t most_lanes = 16;
inline constexpr std::size_t series_count = 15;
inline constexpr double record_every_s = 120.0;  ///< at most, while steps are shorter

/// Writes down what the columns of one set of lanes go through.
class ColumnRecorder {
 public:
  using Lanes = std::array<double, most_lanes>;
  struct Energies {
    Lanes surface_j_m2;
    Lanes ground_j_m2;
    Lanes source_j_m2;
    Lanes stored_j_m2;
  };

  ColumnRecorder(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                 std::span<ColumnSolution> solutions);

  /// `values` holds `lanes` numbers for each series of ColumnHistory, in its order; those of the
  /// lanes marked in `which` are kept.
  void put(const Lanes& which, const double* values, std::size_t lanes);
  /// The last of the marked lanes.
  void put_energy(const Lanes& which, const Energies& energies);

 private:
  std::span<ColumnSolution> solutions_;
};

/// Solves up to `lanes_at_once()` columns side by side, on the widest instruction set that this
/// machine has. A column's solution does not depend on those beside it.
void solve_side_by_side(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                        std::span<ColumnSolution> solutions);
std::size_t lanes_at_once();

}  // namespace slabtide
