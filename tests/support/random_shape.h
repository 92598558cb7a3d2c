#pragma once

#include <string>
#include <vector>

#include "slabtide/core/geometry.h"
#include "support/byte_source.h"

namespace slabtide::test {

/// What a zone is drawn as, in feet, its own corner at the origin.
struct RandomShape {
  std::vector<Point> points;  ///< in feet whatever the members are called
  bool is_path = false;
  double width_ft = 0.0;  ///< a path's
  /// The room it takes, for the next zone to stand beside.
  double reach_x_ft = 0.0;
  double reach_y_ft = 0.0;
};

/// Rectangles most of all; corners, notches, combs, rounds, wedges, slivers, walks. `faulty`: now
/// and then one that cannot be built at all (no points, crossing itself, a point twice).
RandomShape random_shape(ByteSource& bytes, bool faulty);

/// A length in feet, short ones as often as long ones.
double random_length_ft(ByteSource& bytes, double low_ft, double high_ft);

}  // namespace slabtide::test
