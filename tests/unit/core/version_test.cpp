#include "slabtide/core/version.h"

#include <doctest/doctest.h>

TEST_CASE("the version is the one the build was told") {
  CHECK(slabtide::version() == SLABTIDE_VERSION);
}
