#pragma once

namespace slabtide {

/// Conductivity and heat capacity of a layer.
struct ThermalMaterial {
  double conductivity_w_mk = 0.0;
  double heat_capacity_j_m3k = 0.0;
};

/// A layer of one material.
struct Layer {
  double thickness_m = 0.0;
  ThermalMaterial material;
};

}  // namespace slabtide
