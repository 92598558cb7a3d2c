#pragma once

#include <functional>
#include <optional>
#include <vector>

namespace slabtide {

/// Where something that can be so or not changes with a number.
struct Crossing {
  bool at_least = false;      ///< whether it is so at the low end of the range
  bool at_most = false;       ///< and at the high end
  std::vector<double> turns;  ///< where it changes, rising; none where it never does

  bool never() const { return turns.empty(); }
  bool once() const { return turns.size() == 1; }
};

/// Looks at `points` evenly spaced numbers from `low` to `high` for changes of `holds`, and
/// halves each step that has one until it is under `to` wide; what comes and goes between two
/// neighbouring points is not seen. `holds` may be asked from several threads at once for the
/// points, never for the halving, so that the result is the same for any number of them.
/// Error: std::invalid_argument unless low < high, points > 1 and to > 0.
Crossing find_crossing(const std::function<bool(double)>& holds, double low, double high,
                       int points, double to, int threads);

}  // namespace slabtide
