#pragma once

#include <string>
#include <vector>

#include "slabtide/core/geometry.h"
#include "support/byte_source.h"

namespace slabtide::test {

/// The shape of a zone, in feet, with its own corner at the origin.
struct RandomShape {
  std::vector<Point> points;  ///< in feet, despite the names of the members
  bool is_path = false;
  double width_ft = 0.0;  ///< of a walkway
  /// The space it needs, so that the next zone can be placed beside it.
  double reach_x_ft = 0.0;
  double reach_y_ft = 0.0;
};

/// Mostly rectangles; also corners, notches, combs, rounds, wedges, slivers and walkways. With
/// `faulty`, sometimes a shape that cannot be built (no points, crossing sides, a repeated point).
RandomShape random_shape(ByteSource& bytes, bool faulty);

/// A length in feet; short and long ones are equally likely.
double random_length_ft(ByteSource& bytes, double low_ft, double high_ft);

}  // namespace slabtide::test
