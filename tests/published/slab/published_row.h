#pragma once

#include <cmath>
#include <string>
#include <string_view>

#include <doctest/doctest.h>
#include <fmt/format.h>

namespace slabtide::fixtures {

/// A table of the world outside, with where it is from and how sure that is.
struct Published {
  std::string_view source;
  std::string_view status;
  double tolerance = 0.0;
  std::string_view unit;
};

/// Checks a row against its table's tolerance and prints the disagreement seen.
inline void check_row(const Published& table, const std::string& row, double published,
                      double computed) {
  const double apart = computed - published;
  MESSAGE(fmt::format(
      "{}: published {:.6g}, computed {:.6g}, apart {:+.3g} {} (allowed {:g}) [{}; {}]", row,
      published, computed, apart, table.unit, table.tolerance, table.source, table.status));
  CHECK_MESSAGE(std::abs(apart) <= table.tolerance, row);
}

}  // namespace slabtide::fixtures
