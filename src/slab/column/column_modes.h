#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <vector>

#include "slab/process/conduction.h"
#include "slabtide/slab/column/column.h"

namespace slabtide {

/// The ground's temperature is fixed at this depth under the slab (ours), or 0.3 m under the last
/// base course if that is deeper.
inline constexpr double fixed_ground_below_slab_m = 0.6;

/// Depths at which setting is followed, from the exposed surface.
struct ProbeDepths {
  double top_m = 0.0;     ///< 5 mm
  double work_m = 0.0;    ///< 20 mm: what finishers feel
  double deep_m = 0.0;    ///< 40 mm or mid-depth, whichever is less
  double middle_m = 0.0;  ///< initial and final set
};
ProbeDepths probe_depths(double thickness_m);

/// Heat of hydration is worked out at so many points of the slab, those of Gauss-Legendre's rule,
/// and runs through them as a polynomial.
inline constexpr std::size_t heat_points = 4;
inline constexpr std::size_t probe_count = 4;

/// A kept profile has so many depths.
inline constexpr std::size_t profile_points = 36;

/// How a column conducts, by its thickness, its layers and the settings alone. One entry per mode
/// in each vector.
struct ColumnModes {
  ColumnModes(const ColumnCase& column, const SolverSettings& settings);

  ConductionModes conduction;
  std::vector<double> at_surface;
  std::array<std::vector<double>, probe_count> at_probe;  ///< in the order of ProbeDepths
  std::array<std::vector<double>, heat_points> at_heat;
  std::array<double, heat_points> heat_thickness_m{};  ///< that each point stands for
  /// What 1 W/m2 released by what a point stands for adds to each amplitude, per second.
  std::array<std::vector<double>, heat_points> from_heat;
  std::vector<double> in_mean;  ///< of the slab
  /// Top minus bottom of the straight line with the same first moment as the slab.
  std::vector<double> in_gradient;
  std::vector<double> stored_j_m2;
  std::vector<double> profile_depth_m;
  std::vector<std::vector<double>> at_profile;  ///< at each of these depths

  std::size_t count() const { return at_surface.size(); }
};

/// Modes worked out, for all columns that conduct alike.
class SharedModes {
 public:
  /// Those of this column, unless they are there.
  void add(const ColumnCase& column, const SolverSettings& settings);
  /// Those of this column; null if they are not there.
  const ColumnModes* find(const ColumnCase& column, const SolverSettings& settings) const;

 private:
  std::map<std::vector<double>, ColumnModes> modes_;  // by the numbers that they depend on
};

/// T_0 of a column: the temperature far below, or, of a face that knows no ground, of the concrete.
double rest_c(const ColumnCase& column);

/// The amplitudes of a column's modes when it is placed.
std::vector<double> placed_amplitudes(const ColumnCase& column, const ColumnModes& modes);

/// The temperature below the slab at the start.
double ground_at_c(const ColumnCase& column, double below_slab_m);

}  // namespace slabtide
