#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

#include "slabtide/day/practice/uncertain_inputs.h"

namespace slabtide {

/// What is believed of the uncertain inputs: a normal distribution over all of them. As it starts:
/// each standard normal by itself.
///
/// Idealises: what is seen depends on the uncertain inputs in a straight line, and errors are
/// normal. Then it is exact (Kalman 1960, A new approach to linear filtering and prediction
/// problems, J. Basic Eng. 82; published). It serves to find the days worth computing and the
/// readings that cannot be right; the days themselves are weighed without it.
class Belief {
 public:
  Belief();

  /// How a figure depends on the uncertain inputs: level + slope . z, off by `rest_variance`.
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

  /// Takes in that the figure was seen to be `value`, with an error of this variance.
  void see(const Line& line, double value, double error_variance);

  /// Moves a standard normal point to the belief, widened by `factor` in every direction.
  UncertainInputs moved(const UncertainInputs& standard, double factor) const;

  /// Logarithm of the density of the same, but for a constant.
  double log_density(const UncertainInputs& uncertain_inputs, double factor) const;

 private:
  using Matrix = std::array<std::array<double, uncertain_input_count>, uncertain_input_count>;
  Matrix root() const;

  UncertainInputs mean_;
  Matrix covariance_{};
};

/// The line nearest to the figures over these uncertain inputs (least squares, slopes drawn
/// slightly toward 0 so that few days do not make wild ones).
Belief::Line fit_line(std::span<const UncertainInputs> uncertain_inputs,
                      std::span<const double> figures);

}  // namespace slabtide
