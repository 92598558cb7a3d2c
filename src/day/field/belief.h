#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/day/practice/uncertain_inputs.h"

namespace slabtide {

/// The distribution of the uncertain inputs given what was observed: a normal distribution over all
/// of them. It starts with independent standard normals.
///
/// Idealises: what is observed depends linearly on the uncertain inputs, and errors are normal.
/// Then it is exact (Kalman 1960, A new approach to linear filtering and prediction problems, J.
/// Basic Eng. 82; published). It is used to find the days worth computing and the observations that
/// cannot be right; the weights of the days themselves do not depend on it.
class Belief {
 public:
  Belief();

  /// How a figure depends on the uncertain inputs: level + slope . z, with an error of
  /// `rest_variance`.
  struct Line {
    double level = 0.0;
    std::array<double, uncertain_input_count> slope{};
    double rest_variance = 0.0;
  };

  struct Expected {
    double mean = 0.0;
    double variance = 0.0;
  };
  Expected expect(const Line& line) const;

  /// Updates the belief with an observed `value` that has an error of this variance.
  void see(const Line& line, double value, double error_variance);

  /// Maps a standard normal point to the belief, widened by `factor` in every direction.
  UncertainInputs moved(const UncertainInputs& standard, double factor) const;

  /// Logarithm of the density of the widened belief, up to a constant.
  double log_density(const UncertainInputs& uncertain_inputs, double factor) const;

 private:
  using Matrix = std::array<std::array<double, uncertain_input_count>, uncertain_input_count>;
  Matrix root() const;

  UncertainInputs mean_;
  Matrix covariance_{};
};

/// The line that best fits the figures at these uncertain inputs (least squares, with slopes shrunk
/// slightly toward 0 so that a few days do not give wild ones).
Belief::Line fit_line(std::span<const UncertainInputs> uncertain_inputs,
                      std::span<const double> figures);

}  // namespace slabtide
