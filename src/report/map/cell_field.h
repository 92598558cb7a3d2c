#pragma once

#include <optional>
#include <vector>

#include "report/markup/contours.h"
#include "slabtide/core/geometry.h"
#include "slabtide/job/geometry/cells.h"

namespace slabtide {

/// Interpolates values at a zone's cells to a lattice fine enough for contour lines.
///
/// Idealises: at each node a plane through the values nearby, weighted by a bell curve about as
/// wide as a cell (local linear regression: a uniform slope is preserved up to the edge).
/// Source: Cleveland 1979, Robust locally weighted regression and smoothing scatterplots,
/// JASA 74, in two dimensions and without its robust steps. Status: published, from memory.
class CellField {
 public:
  /// `within` is the area that the lattice covers; nodes slightly outside it are included, so that
  /// lines reach its edges; `cell_m` is the side of a cell. Error: std::invalid_argument for no
  /// centres.
  CellField(const std::vector<Point>& centres, const Outline& within, double cell_m = cell_size_m);

  /// `values` has one value per centre. A node is empty if a centre with enough weight has no
  /// value. Error: std::invalid_argument for a different number of values.
  Lattice lattice(const std::vector<std::optional<double>>& values) const;

 private:
  struct Share {
    std::size_t centre;
    double weight;
  };

  static std::vector<Share> fractions_at(Point node, const std::vector<Point>& centres,
                                         double bell_m);

  std::size_t centre_count_;
  Lattice empty_;
  std::vector<std::vector<Share>> fractions_;  ///< of each node; none if it lies outside
};

}  // namespace slabtide
