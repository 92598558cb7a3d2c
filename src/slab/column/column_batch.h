#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include <hwy/aligned_allocator.h>

#include "slab/process/thin_air.h"
#include "slabtide/slab/column/column.h"

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
  ThinAir air;
  std::vector<SharedWeather> shared;  ///< one an instant of the grid
};

/// As many lanes as any instruction set has.
inline constexpr std::size_t max_lanes = 8;
inline constexpr std::size_t series_count = 15;
inline constexpr double record_every_s = 120.0;  ///< at most, while steps are shorter

/// Memory that the columns of one set of lanes leave to the next.
struct ColumnWorkspace {
  hwy::AlignedFreeUniquePtr<double[]> rows;
  std::size_t room = 0;  ///< of `rows`
  std::vector<std::array<double, max_lanes>> kept;

  /// Makes sure of room for so many numbers, and for marks of so many rows.
  void clear_for(std::size_t numbers, std::size_t marks);
};

/// Writes down what the columns of one set of lanes go through.
class ColumnRecorder {
 public:
  using Lanes = std::array<double, max_lanes>;
  struct Energies {
    Lanes surface_j_m2;
    Lanes ground_j_m2;
    Lanes source_j_m2;
    Lanes stored_j_m2;
  };

  /// Takes all the memory that the steps will ask for.
  ColumnRecorder(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                 std::span<ColumnSolution> solutions, std::size_t lanes,
                 ColumnWorkspace& workspace);

  /// Where to write an entry: a number of every lane for each series of ColumnHistory, in its
  /// order. Of the lanes that are marked it is kept.
  double* next_row(const Lanes& kept);
  void put_energies(const Lanes& which, const Energies& energies);
  /// Hands the series over.
  void finish();

 private:
  std::span<ColumnSolution> solutions_;
  std::size_t lanes_;
  ColumnWorkspace& desk_;
};

}  // namespace slabtide
