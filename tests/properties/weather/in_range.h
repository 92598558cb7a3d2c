#pragma once

#include <rapidcheck.h>

namespace slabtide::testing {

/// A number between `low` and `high`, in a thousand steps.
inline double in_range(double low, double high) {
  constexpr int steps = 1000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

}  // namespace slabtide::testing
