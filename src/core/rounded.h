#pragma once

#include <cmath>

namespace slabtide {

/// Rounded to so many decimals, halves away from zero; never -0, which nobody should read.
double rounded(double value, int decimals);

/// A figure as it is compared where it orders a list, or picks the first or largest of it: to a
/// millionth of its unit. What is alike but for the last bits, which differ from one processor to
/// another, then counts as the same, and the order of a stable sort stands.
inline double rounded(double value) {
  constexpr double steps = 1.0e6;
  return std::round(value * steps) / steps;
}

}  // namespace slabtide
