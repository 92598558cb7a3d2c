#include "report/words/decimals.h"

#include <doctest/doctest.h>

namespace slabtide {

TEST_CASE("figures in words are rounded as the JSON's") {
  CHECK(fixed_words(28.5) == "29");
  CHECK(fixed_words(-28.5) == "-29");
  CHECK(fixed_words(hundredths(1.125), 2) == fixed_words(1.125, 2));
  CHECK(fixed_words(3.0, 1) == "3.0");
}

TEST_CASE("figures in words are never -0") {
  CHECK(fixed_words(-0.4) == "0");
  CHECK(fixed_words(-0.04, 1) == "0.0");
}

}  // namespace slabtide
