#pragma once

#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "slab/process/conduction.h"

namespace slabtide::test {

/// Heat into the column at the surface, and its derivative with respect to the surface temperature.
struct SurfaceFlux {
  double w_m2 = 0.0;
  double slope_w_m2k = 0.0;
};

/// The flux at a temperature of the outer face at the end of a step; it decreases with the
/// temperature.
using SurfaceLaw = std::function<SurfaceFlux(double outer_c)>;

/// Heat released at a depth.
struct Source {
  double depth_m = 0.0;
  double w_m2 = 0.0;
};

/// One column and how it changes: what the columns' core does side by side, for double.
class ConductionColumn {
 public:
  /// `start_c(layer, depth)` is its temperature at first; `rest_c` that of a fixed bottom.
  ConductionColumn(std::vector<Element> elements, BottomKind bottom, double rest_c,
                   const std::function<double(std::size_t layer, double depth_m)>& start_c);

  double at_c(double depth_m) const;
  /// The surface of the column itself, below any cover.
  double surface_c() const { return surface_c_; }
  /// The face that the surface law applies to: the cover's outer face, or the surface.
  double outer_c() const { return outer_c_; }
  double inward_w_m2() const { return inward_w_m2_; }
  /// Beyond what it stores at `rest_c`.
  double stored_j_m2() const;

  /// Sets the length of the following steps. Error: std::invalid_argument unless above 0.
  void set_step(double step_s);
  /// A massless resistance between the outer face and the surface, m2K/W; 0 for none.
  void set_cover(double resistance_m2k_w) { cover_m2k_w_ = resistance_m2k_w; }

  /// Finds the heat through the surface that `law` gives with the present temperatures.
  void settle_surface(const SurfaceLaw& law);

  /// One step with steady sources. Returns the heat in through the surface, J/m2.
  double step(const SurfaceLaw& law, std::span<const Source> sources = {});

 private:
  class Rows;

  ConductionModes modes_;
  double rest_c_;
  std::vector<double> at_surface_;
  std::vector<double> amplitudes_;
  std::vector<double> work_;  // rows of the steps
  double step_s_ = 0.0;
  double response_m2k_w_ = 0.0;
  double cover_m2k_w_ = 0.0;
  double surface_c_ = 0.0;
  double outer_c_ = 0.0;
  double inward_w_m2_ = 0.0;
};

/// A material in one layer.
std::vector<Element> one_layer(double thickness_m, const ThermalMaterial& material, int order);

}  // namespace slabtide::test
