#pragma once

#include <functional>
#include <optional>
#include <vector>

namespace slabtide {

/// Where a condition that depends on a number changes.
struct Crossing {
  bool at_least = false;      ///< whether it holds at the low end of the range
  bool at_most = false;       ///< whether it holds at the high end
  std::vector<double> turns;  ///< where it changes, increasing; empty if it never does

  bool never() const { return turns.empty(); }
  bool once() const { return turns.size() == 1; }
};

/// Evaluates `holds` at `points` evenly spaced numbers from `low` to `high`, and bisects each
/// interval in which it changes until it is narrower than `to`; changes back and forth between two
/// neighbouring points are not found. `holds` may be called from several threads at once for the
/// points, but not for the bisection, so the result is the same for any number of threads.
/// Error: std::invalid_argument unless low < high, points > 1 and to > 0.
Crossing find_crossing(const std::function<bool(double)>& holds, double low, double high,
                       int points, double to, int threads);

}  // namespace slabtide
