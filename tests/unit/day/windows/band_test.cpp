#include "slabtide/day/windows/band.h"

#include <doctest/doctest.h>

namespace slabtide {
namespace {

TEST_CASE("a quantile lies straight between the middles of its neighbours' weights") {
  // By hand: equal weights of 1/4 have their middles at 1/8, 3/8, 5/8 and 7/8.
  const std::vector<Weighted> values{{40.0, 0.25}, {10.0, 0.25}, {30.0, 0.25}, {20.0, 0.25}};
  CHECK(*weighted_quantile(values, 0.5) == doctest::Approx(25.0));
  CHECK(*weighted_quantile(values, 0.125) == doctest::Approx(10.0));
  CHECK(*weighted_quantile(values, 0.25) == doctest::Approx(15.0));
  CHECK(*weighted_quantile(values, 0.01) == doctest::Approx(10.0));
  CHECK(*weighted_quantile(values, 0.99) == doctest::Approx(40.0));
}

TEST_CASE("what weighs nothing does not count, what weighs more counts more") {
  CHECK(*weighted_quantile({{1.0, 0.0}, {2.0, 1.0}}, 0.5) == 2.0);
  // Middles at 0.05 and 0.55 of a weight of 1.
  CHECK(*weighted_quantile({{0.0, 0.1}, {10.0, 0.9}}, 0.3) == doctest::Approx(5.0));
}

TEST_CASE("what never comes stands behind all that does") {
  const std::vector<Weighted> values{{std::nullopt, 0.5}, {5.0, 0.5}};
  CHECK(*weighted_quantile(values, 0.2) == 5.0);
  CHECK_FALSE(weighted_quantile(values, 0.9));
  CHECK(fraction_that_comes(values) == 0.5);
}

TEST_CASE("without weight there is no quantile") {
  CHECK_FALSE(weighted_quantile({}, 0.5));
  CHECK_FALSE(weighted_quantile({{1.0, 0.0}}, 0.5));
  CHECK(fraction_that_comes({}) == 0.0);
}

}  // namespace
}  // namespace slabtide
