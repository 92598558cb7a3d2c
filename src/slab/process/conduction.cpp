#include "conduction.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <stdexcept>
#include <utility>

#include <Eigen/Eigenvalues>

namespace slabtide {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

/// A profile that bends within a layer is read at so many points more than its polynomial has
/// terms.
constexpr int more_samples_than_order = 5;

void check(std::span<const Element> elements) {
  if (elements.empty()) throw std::invalid_argument("conduction: no layer");
  for (const Element& each : elements) {
    if (!(each.layer.thickness_m > 0.0 && each.layer.material.conductivity_w_mk > 0.0 &&
          each.layer.material.heat_capacity_j_m3k > 0.0))
      throw std::invalid_argument("conduction: a layer has no thickness or no material");
    if (each.order < 1) throw std::invalid_argument("conduction: a layer's order is under 1");
  }
}

/// The eigenvalues of the symmetric matrix with zeros on the diagonal and `beside` next to it: the
/// zeros of the polynomials with that recurrence (Golub & Welsch 1969).
Eigen::SelfAdjointEigenSolver<MatrixXd> zeros_of(const VectorXd& beside) {
  Eigen::SelfAdjointEigenSolver<MatrixXd> solver;
  solver.computeFromTridiagonal(VectorXd::Zero(beside.size() + 1), beside);
  return solver;
}

/// Gauss-Lobatto's points from -1 to 1: the ends, and the zeros of the derivative of Legendre's
/// polynomial of this order.
VectorXd lobatto_points(int order) {
  VectorXd points(order + 1);
  points[0] = -1.0;
  points[order] = 1.0;
  if (order < 2) return points;
  VectorXd beside(order - 2);
  for (Index i = 0; i < beside.size(); ++i) {
    const auto k = static_cast<double>(i + 1);
    beside[i] = std::sqrt(k * (k + 2.0) / ((2.0 * k + 1.0) * (2.0 * k + 3.0)));
  }
  points.segment(1, order - 1) = zeros_of(beside).eigenvalues();
  return points;
}

double legendre(int order, double x) {
  double before = 1.0;
  double now = order > 0 ? x : 1.0;
  for (int k = 1; k < order; ++k) {
    const double next = ((2.0 * k + 1.0) * x * now - k * before) / (k + 1.0);
    before = now;
    now = next;
  }
  return now;
}

VectorXd lobatto_weights(const VectorXd& points) {
  const auto order = static_cast<int>(points.size()) - 1;
  return points.unaryExpr([order](double x) {
    const double p = legendre(order, x);
    return 2.0 / (order * (order + 1.0) * p * p);
  });
}

/// The derivatives at each point (row) of the polynomials that are 1 at one point and 0 at the
/// others (column).
MatrixXd derivatives(const VectorXd& points) {
  const Index n = points.size();
  VectorXd product = VectorXd::Ones(n);
  for (Index i = 0; i < n; ++i) {
    for (Index j = 0; j < n; ++j) {
      if (i != j) product[i] *= points[i] - points[j];
    }
  }
  MatrixXd result = MatrixXd::Zero(n, n);
  for (Index i = 0; i < n; ++i) {
    for (Index j = 0; j < n; ++j) {
      if (i != j) result(i, j) = product[i] / (product[j] * (points[i] - points[j]));
    }
    result(i, i) = -result.row(i).sum();
  }
  return result;
}

/// The conductances between an element's points, W/m2K.
MatrixXd stiffness(const Element& element, const VectorXd& points) {
  const MatrixXd slope = derivatives(points);
  const double scale = 2.0 * element.layer.material.conductivity_w_mk / element.layer.thickness_m;
  return scale * slope.transpose() * lobatto_weights(points).asDiagonal() * slope;
}

}  // namespace

std::vector<QuadraturePoint> quadrature_over(double length, int points) {
  if (points < 1) throw std::invalid_argument("quadrature: no points");
  VectorXd beside(points - 1);
  for (Index i = 0; i < beside.size(); ++i) {
    const auto k = static_cast<double>(i + 1);
    beside[i] = k / std::sqrt(4.0 * k * k - 1.0);
  }
  const auto solver = zeros_of(beside);
  std::vector<QuadraturePoint> result;
  for (Index i = 0; i < points; ++i) {
    const double first = solver.eigenvectors()(0, i);
    result.push_back({0.5 * length * (1.0 + solver.eigenvalues()[i]), length * first * first});
  }
  return result;
}

ConductionModes::ConductionModes(std::span<const Element> elements, BottomKind bottom)
    : faces_m_{0.0} {
  check(elements);
  Index size = 1;
  for (const Element& each : elements) size += each.order;
  MatrixXd conductance_w_m2k = MatrixXd::Zero(size, size);
  VectorXd capacity_j_m2k = VectorXd::Zero(size);
  Index first = 0;
  for (std::size_t e = 0; e < elements.size(); ++e) {
    const Layer& layer = elements[e].layer;
    const VectorXd points = lobatto_points(elements[e].order);
    const VectorXd capacities =
        0.5 * layer.thickness_m * layer.material.heat_capacity_j_m3k * lobatto_weights(points);
    for (Index i = 0; i < points.size(); ++i) {
      nodes_.push_back({e, faces_m_.back() + 0.5 * layer.thickness_m * (1.0 + points[i]),
                        static_cast<std::size_t>(first + i)});
    }
    capacity_j_m2k.segment(first, points.size()) += capacities;
    conductance_w_m2k.block(first, first, points.size(), points.size()) +=
        stiffness(elements[e], points);
    first += elements[e].order;
    faces_m_.push_back(faces_m_.back() + layer.thickness_m);
  }
  const Index free = bottom == BottomKind::insulated ? size : size - 1;
  const VectorXd scale = capacity_j_m2k.head(free).cwiseSqrt().cwiseInverse();
  const Eigen::SelfAdjointEigenSolver<MatrixXd> modes(
      scale.asDiagonal() * conductance_w_m2k.topLeftCorner(free, free) * scale.asDiagonal());
  const MatrixXd shapes = scale.asDiagonal() * modes.eigenvectors();
  for (Index m = 0; m < free; ++m) {
    decay_per_s_.push_back(std::max(modes.eigenvalues()[m], 0.0));
    for (Index i = 0; i < free; ++i) shapes_.push_back(shapes(i, m));
  }
  take_samples(elements);
}

void ConductionModes::take_samples(std::span<const Element> elements) {
  for (std::size_t i = 0; i < elements.size(); ++i) {
    const Layer& layer = elements[i].layer;
    for (const QuadraturePoint& point :
         quadrature_over(layer.thickness_m, elements[i].order + more_samples_than_order)) {
      const double depth_m = faces_m_[i] + point.at;
      std::vector<double> j_m2k = at(depth_m);
      for (double& each : j_m2k) each *= point.weight * layer.material.heat_capacity_j_m3k;
      samples_.push_back({i, depth_m, std::move(j_m2k)});
    }
  }
}

double ConductionModes::shape(std::size_t mode, std::size_t unknown) const {
  return unknown < unknowns() ? shapes_[mode * unknowns() + unknown] : 0.0;  // the bottom: held
}

std::vector<double> ConductionModes::at(double depth_m) const {
  const auto below =
      std::upper_bound(std::next(faces_m_.begin()), std::prev(faces_m_.end()), depth_m);
  const auto layer = static_cast<std::size_t>(below - faces_m_.begin()) - 1;
  std::vector<double> result(count(), 0.0);
  for (const Node& node : nodes_) {
    if (node.layer != layer) continue;
    double weight = 1.0;  // of Lagrange's interpolation
    for (const Node& other : nodes_) {
      if (other.layer == layer && other.unknown != node.unknown)
        weight *= (depth_m - other.depth_m) / (node.depth_m - other.depth_m);
    }
    for (std::size_t m = 0; m < count(); ++m) result[m] += weight * shape(m, node.unknown);
  }
  return result;
}

std::vector<double> ConductionModes::stored_j_m2() const {
  return amplitudes([](std::size_t, double) { return 1.0; });
}

std::vector<double> ConductionModes::amplitudes(
    const std::function<double(std::size_t, double)>& warmer_k) const {
  std::vector<double> result(count(), 0.0);
  for (const Sample& sample : samples_) {
    const double warmer = warmer_k(sample.layer, sample.depth_m);
    for (std::size_t m = 0; m < count(); ++m) result[m] += warmer * sample.j_m2k[m];
  }
  return result;
}

}  // namespace slabtide
