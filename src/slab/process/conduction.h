#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

#include "slabtide/slab/material/layer.h"

// One-dimensional conduction through layers, from the surface (depth 0) down. Independent of
// concrete: the heat through the surface and the heat released inside are passed in.

namespace slabtide {

/// A layer in which the temperature is a polynomial of this order in depth.
struct Element {
  Layer layer;
  int order = 0;
};

/// Whether the bottom passes no heat or is held at a temperature.
enum class BottomKind { insulated, fixed_temperature };

/// A point of Gauss-Legendre's rule over a length: sums of these weights times the values there are
/// integrals, exact for polynomials up to the order of twice the points less one.
struct QuadraturePoint {
  double at = 0.0;
  double weight = 0.0;
};
std::vector<QuadraturePoint> quadrature_over(double length, int points);

/// The ways in which a column of layers conducts, each of which fades at a pace of its own: the
/// temperature at depth x is T_0 + sum of f_m(x) a_m, and each amplitude a_m goes alone,
///
///   da_m/dt = -decay_m a_m + f_m(0) q + sum of f_m(x_k) s_k,
///
/// with q the heat through the surface and s_k heat released at x_k, W/m2. T_0 is the temperature
/// of a fixed bottom; of an insulated one it may be any.
///
/// Idealises: constant properties; no moisture transport.
/// Source: spectral elements on the Gauss-Lobatto points of each layer (Patera 1984, A spectral
/// element method for fluid dynamics, J. Comput. Phys. 54), which make a symmetric eigenproblem;
/// published. With fourteen unknowns set times are ten times nearer the converged ones than by 22
/// finite volumes.
class ConductionModes {
 public:
  /// Error: std::invalid_argument if there is no layer, one without thickness or material, or an
  /// order under 1.
  ConductionModes(std::span<const Element> elements, BottomKind bottom);

  std::size_t count() const { return decay_per_s_.size(); }
  const std::vector<double>& decay_per_s() const { return decay_per_s_; }
  double depth_m() const { return faces_m_.back(); }

  /// f_m(x) of each mode at a depth within the column.
  std::vector<double> at(double depth_m) const;

  /// The heat that each mode stores at amplitude 1, J/m2.
  std::vector<double> stored_j_m2() const;

  /// The amplitudes of a profile, of which `warmer_k(layer, depth)` is how much warmer it is than
  /// T_0, at depths within the layer: those of least squares. It may jump between layers: no heat
  /// is lost.
  std::vector<double> amplitudes(
      const std::function<double(std::size_t layer, double depth_m)>& warmer_k) const;

 private:
  struct Node {
    std::size_t layer;
    double depth_m;
    std::size_t unknown;  // which the neighbours in two layers share
  };
  /// A depth at which a profile is read, and what 1 K there stores in each mode.
  struct Sample {
    std::size_t layer;
    double depth_m;
    std::vector<double> j_m2k;
  };

  void take_samples(std::span<const Element> elements);

  std::size_t unknowns() const { return decay_per_s_.size(); }
  double shape(std::size_t mode, std::size_t unknown) const;

  std::vector<double> faces_m_;  // of the layers, from 0 down
  std::vector<Node> nodes_;      // of one layer after the other
  std::vector<double> decay_per_s_;
  std::vector<double> shapes_;  // at the unknowns, mode by mode
  std::vector<Sample> samples_;
};

}  // namespace slabtide
