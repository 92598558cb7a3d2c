#pragma once

#include <cstddef>
#include <vector>

namespace slabtide {

/// From values to places along an axis, straight or by the logarithm.
class AxisScale {
 public:
  enum class Kind { straight, logarithmic };

  /// `low` lands on `at_low`, `high` on `at_high`.
  /// Error: std::invalid_argument unless low < high, and 0 < low where logarithmic.
  AxisScale(Kind kind, double low, double high, double at_low, double at_high);

  double low() const { return low_; }
  double high() const { return high_; }
  /// Values beyond the ends are held at them.
  double place(double value) const;

 private:
  Kind kind_;
  double low_;
  double high_;
  double at_low_;
  double at_high_;
};

/// Round numbers (1, 2 or 5 times a power of ten apart) from `low` to `high`, at most `max`.
/// Error: std::invalid_argument unless low < high and most > 1.
std::vector<double> round_ticks(double low, double high, std::size_t max);

/// The powers of ten from `low` to `high`. Error: std::invalid_argument unless 0 < low < high.
std::vector<double> decade_ticks(double low, double high);

/// The distance of neighbouring ticks' decimals: 0 for whole numbers, 1 for tenths ...
int decimals_of(const std::vector<double>& ticks);

}  // namespace slabtide
