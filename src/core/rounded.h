#pragma once

#include <cmath>

namespace slabtide {

/// Rounded to this many decimals, halves away from zero; never -0.
double rounded(double value, int decimals);

/// A figure rounded to a millionth of its unit, for ordering a list or picking its first or largest
/// item. Figures that differ only in the last bits (which vary between processors) then count as
/// equal, and a stable sort keeps their order.
inline double rounded(double value) {
  constexpr double steps = 1.0e6;
  return std::round(value * steps) / steps;
}

}  // namespace slabtide
