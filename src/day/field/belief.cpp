#include "belief.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace slabtide {

namespace {

constexpr std::size_t n = uncertain_input_count;
/// Added to the diagonal in a fit, counted in days: shrinks slopes toward 0 as one more day would
/// (ours).
constexpr double ridge = 1.0;
/// Keeps a factored matrix positive despite rounding.
constexpr double min_pivot = 1e-12;

using Vector = std::array<double, n>;
using Square = std::array<Vector, n>;

double dot(const Vector& a, const Vector& b) {
  return std::inner_product(a.begin(), a.end(), b.begin(), 0.0);
}

Vector times(const Square& matrix, const Vector& vector) {
  Vector result{};
  for (std::size_t i = 0; i < n; ++i) result[i] = dot(matrix[i], vector);
  return result;
}

/// Lower triangle L with L L' = matrix (Cholesky).
Square factored(const Square& matrix) {
  Square root{};
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      double rest = matrix[i][j];
      for (std::size_t k = 0; k < j; ++k) rest -= root[i][k] * root[j][k];
      root[i][j] = i == j ? std::sqrt(std::max(rest, min_pivot)) : rest / root[j][j];
    }
  }
  return root;
}

/// Solves L x = right.
Vector solved_lower(const Square& root, const Vector& right) {
  Vector x{};
  for (std::size_t i = 0; i < n; ++i) {
    double rest = right[i];
    for (std::size_t k = 0; k < i; ++k) rest -= root[i][k] * x[k];
    x[i] = rest / root[i][i];
  }
  return x;
}

/// Solves L' x = right.
Vector solved_upper(const Square& root, const Vector& right) {
  Vector x{};
  for (std::size_t i = n; i-- > 0;) {
    double rest = right[i];
    for (std::size_t k = i + 1; k < n; ++k) rest -= root[k][i] * x[k];
    x[i] = rest / root[i][i];
  }
  return x;
}

/// The mean figure and the mean uncertain inputs of the days.
struct Middle {
  Vector z{};
  double figure = 0.0;
};

Middle middle_of(std::span<const UncertainInputs> uncertain_inputs,
                 std::span<const double> figures) {
  Middle middle;
  const auto count = static_cast<double>(figures.size());
  for (std::size_t i = 0; i < figures.size(); ++i) {
    middle.figure += figures[i] / count;
    for (std::size_t k = 0; k < n; ++k) middle.z[k] += uncertain_inputs[i].z[k] / count;
  }
  return middle;
}

}  // namespace

Belief::Belief() {
  for (std::size_t i = 0; i < n; ++i) covariance_[i][i] = 1.0;
}

Belief::Expected Belief::expect(const Line& line) const {
  return {line.level + dot(line.slope, mean_.z),
          dot(line.slope, times(covariance_, line.slope)) + line.rest_variance};
}

void Belief::see(const Line& line, double value, double error_variance) {
  const Expected expected = expect(line);
  const double variance = expected.variance + error_variance;
  if (!(variance > 0.0)) return;
  const Vector along = times(covariance_, line.slope);
  for (std::size_t i = 0; i < n; ++i) {
    mean_.z[i] += along[i] * (value - expected.mean) / variance;
    for (std::size_t j = 0; j < n; ++j) covariance_[i][j] -= along[i] * along[j] / variance;
  }
}

Belief::Matrix Belief::root() const { return factored(covariance_); }

UncertainInputs Belief::moved(const UncertainInputs& standard, double factor) const {
  const Matrix lower = root();
  UncertainInputs result = mean_;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t k = 0; k <= i; ++k) result.z[i] += factor * lower[i][k] * standard.z[k];
  }
  return result;
}

double Belief::log_density(const UncertainInputs& uncertain_inputs, double factor) const {
  Vector off{};
  for (std::size_t i = 0; i < n; ++i) off[i] = uncertain_inputs.z[i] - mean_.z[i];
  const Vector standard = solved_lower(root(), off);
  return -0.5 * dot(standard, standard) / (factor * factor);
}

Belief::Line fit_line(std::span<const UncertainInputs> uncertain_inputs,
                      std::span<const double> figures) {
  const Middle middle = middle_of(uncertain_inputs, figures);
  Square normal{};
  Vector right{};
  for (std::size_t i = 0; i < figures.size(); ++i) {
    for (std::size_t a = 0; a < n; ++a) {
      const double za = uncertain_inputs[i].z[a] - middle.z[a];
      right[a] += za * (figures[i] - middle.figure);
      for (std::size_t b = 0; b < n; ++b)
        normal[a][b] += za * (uncertain_inputs[i].z[b] - middle.z[b]);
    }
  }
  for (std::size_t a = 0; a < n; ++a) normal[a][a] += ridge;
  const Square root = factored(normal);
  Belief::Line line;
  line.slope = solved_upper(root, solved_lower(root, right));
  line.level = middle.figure - dot(line.slope, middle.z);
  double rest = 0.0;
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const double off = figures[i] - line.level - dot(line.slope, uncertain_inputs[i].z);
    rest += off * off;
  }
  if (!figures.empty()) line.rest_variance = rest / static_cast<double>(figures.size());
  return line;
}

}  // namespace slabtide
