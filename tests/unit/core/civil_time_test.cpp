#include <doctest/doctest.h>

#include "slabtide/core/civil_time.h"

using namespace slabtide;

TEST_CASE("smoke") { CHECK(TimeZone().name() == "UTC"); }
