#include "slab/process/absorptance.h"

#include <doctest/doctest.h>

using namespace slabtide;

TEST_CASE("concrete lightens as it dries, whatever its colour") {
  CHECK(dry_absorptance(0.72) == doctest::Approx(0.49));
  CHECK(dry_absorptance(0.85) == doctest::Approx(1.0 - 0.15 * 0.51 / 0.28));
  CHECK(dry_absorptance(1.0) == 1.0);
}

TEST_CASE("white concrete dries to no lighter than any measured, and none darkens") {
  CHECK(dry_absorptance(0.40) == doctest::Approx(0.23));
  CHECK(dry_absorptance(0.10) == doctest::Approx(0.10));
}
