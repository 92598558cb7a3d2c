#pragma once

#include <optional>
#include <vector>

#include "report/markup/contours.h"
#include "slabtide/core/geometry.h"

namespace slabtide {

/// Brings values at a zone's cells to a lattice fine enough to draw contour lines on.
///
/// Idealises: at each node a plane through the values near by, weighted by a bell curve as wide
/// as a cell (local linear regression: a slope stays the same slope, up to the edge).
/// Source: Cleveland 1979, Robust locally weighted regression and smoothing scatterplots,
/// JASA 74, in two dimensions and without its robust steps. Status: published, from memory.
class CellField {
 public:
  /// `within` is the ground the lattice covers; nodes a little beyond it count too, so that
  /// lines reach its edges. Error: std::invalid_argument for no centres.
  CellField(const std::vector<Point>& centres, const Outline& within);

  /// One value a centre. A node with a weighty centre that has none has none either.
  /// Error: std::invalid_argument for another number of values.
  Lattice lattice(const std::vector<std::optional<double>>& values) const;

 private:
  struct Share {
    std::size_t centre;
    double weight;
  };

  static std::vector<Share> fractions_at(Point node, const std::vector<Point>& centres);

  std::size_t centre_count_;
  Lattice empty_;
  std::vector<std::vector<Share>> fractions_;  ///< of each node; none where it lies outside
};

}  // namespace slabtide
