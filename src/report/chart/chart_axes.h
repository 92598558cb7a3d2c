#pragma once

#include <cstddef>
#include <vector>

namespace slabtide {

/// Maps values to positions along an axis, linearly or logarithmically.
class AxisScale {
 public:
  enum class Kind { straight, logarithmic };

  /// `low` maps to `at_low`, `high` to `at_high`.
  /// Error: std::invalid_argument unless low < high, and 0 < low for a logarithmic axis.
  AxisScale(Kind kind, double low, double high, double at_low, double at_high);

  double low() const { return low_; }
  double high() const { return high_; }
  /// Values beyond the ends map to the ends.
  double place(double value) const;

 private:
  Kind kind_;
  double low_;
  double high_;
  double at_low_;
  double at_high_;
};

/// Round numbers (1, 2 or 5 times a power of ten apart) from `low` to `high`, at most `max` of
/// them. Error: std::invalid_argument unless low < high and max > 1.
std::vector<double> round_ticks(double low, double high, std::size_t max);

/// The powers of ten from `low` to `high`. Error: std::invalid_argument unless 0 < low < high.
std::vector<double> decade_ticks(double low, double high);

/// The number of decimals that ticks need: 0 for whole numbers, 1 for tenths ...
int decimals_of(const std::vector<double>& ticks);

}  // namespace slabtide
