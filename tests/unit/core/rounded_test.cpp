#include "core/rounded.h"

#include <limits>

#include <doctest/doctest.h>

namespace slabtide {

TEST_CASE("figures that differ in their last bits are the same once rounded") {
  CHECK(0.1 + 0.2 != 0.3);
  CHECK(rounded(0.1 + 0.2) == rounded(0.3));
  CHECK(rounded(86400.0 / 7.0 * 7.0) == rounded(86400.0));
  CHECK(rounded(1.0) < rounded(1.00001));
  const double never = std::numeric_limits<double>::infinity();
  CHECK(rounded(never) == never);
}

}  // namespace slabtide
