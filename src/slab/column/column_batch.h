#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include <hwy/aligned_allocator.h>

#include "slab/column/column_modes.h"
#include "slab/process/thin_air.h"
#include "slabtide/slab/column/column.h"

namespace slabtide {

/// Air temperature, vapour pressure, what the wind does to convection and to evaporation, and
/// emissivity of the sky at one instant; stored together because they are read together.
using SharedWeather = std::array<double, 5>;

/// Data shared by all columns that are solved together.
class ColumnBatch {
 public:
  /// Works out the modes that are not `known`, which must outlive the batch.
  ColumnBatch(const SiteWeather& weather, const SolverSettings& settings,
              std::span<const ColumnCase* const> cases, const SharedModes* known = nullptr);

  /// Of one of the cases given.
  const ColumnModes& modes_of(const ColumnCase& column) const;

  const SiteWeather& weather;
  const SolverSettings& settings;
  double end_s;
  ThinAir air;
  std::vector<SharedWeather> shared;  ///< one per instant of the grid

 private:
  const SharedModes* known_;
  SharedModes worked_out_;
};

/// The largest number of lanes of any instruction set.
inline constexpr std::size_t max_lanes = 16;
inline constexpr std::size_t series_count = 15;
inline constexpr double record_every_s = 120.0;  ///< least time between entries, except the last

/// Memory that one set of lanes passes on to the next.
struct ColumnWorkspace {
  hwy::AlignedFreeUniquePtr<double[]> rows;
  std::size_t room = 0;              ///< capacity of `rows`
  std::vector<std::uint16_t> kept;   ///< a row each, a bit for each lane that it is kept of
  std::vector<std::size_t> offsets;  ///< of the rows kept of one lane, in `rows`

  /// Makes room for this many numbers, and for marks of this many rows.
  void clear_for(std::size_t numbers, std::size_t marks);
};

/// Records the histories of one set of lanes.
class ColumnRecorder {
 public:
  using Lanes = std::array<double, max_lanes>;
  struct Energies {
    Lanes surface_j_m2;
    Lanes source_j_m2;
    Lanes stored_j_m2;
  };

  /// Allocates all the memory that the steps will need.
  ColumnRecorder(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                 std::span<ColumnSolution> solutions, std::size_t lanes, std::size_t profile_depths,
                 ColumnWorkspace& workspace);

  /// Where to write an entry: a number of every lane for each series of ColumnHistory, in its
  /// order, then for each depth of a profile; the time since placing. Of the lanes that are marked
  /// it is kept.
  double* next_row(const Lanes& kept);
  void put_energies(const Lanes& which, const Energies& energies);
  /// Moves the series into the solutions.
  void finish();

 private:
  /// Finds the rows kept of a lane.
  void find_kept(std::size_t lane);
  /// Copies one entry of these rows to `to`, which has room for them.
  void copy_kept(std::size_t entry, double* to, std::size_t apart) const;

  std::span<const ColumnCase* const> cases_;
  std::span<ColumnSolution> solutions_;
  std::size_t lanes_;
  std::size_t entries_;  // of a row, for each lane
  ColumnWorkspace& desk_;
};

}  // namespace slabtide
