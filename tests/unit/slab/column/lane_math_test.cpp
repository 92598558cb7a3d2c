#include <array>
#include <cmath>
#include <cstddef>

#include <doctest/doctest.h>

#include "slab/column/lanes-inl.h"

// With the narrowest instruction set of the machine's kind; column_core_test.cpp holds the others
// against each other. The C library's functions are taken for exact.

namespace {

using slabtide::HWY_NAMESPACE::Lanes;
using slabtide::HWY_NAMESPACE::Memory;

/// The first lane of what `function` makes of x in all of them.
template <class Function>
double first_lane(Function function, double x) {
  HWY_ALIGN std::array<double, Memory<Lanes>::columns> lanes;
  Memory<Lanes>::store(function(Lanes(x)), lanes.data());
  return lanes[0];
}

double exp_of(double x) {
  return first_lane([](Lanes a) { return exp(a); }, x);
}
double log_of(double x) {
  return first_lane([](Lanes a) { return log(a); }, x);
}

constexpr double exact_to = 1.1e-10;

}  // namespace

TEST_CASE("the exponential of lanes is exact to 1.1e-10") {
  double worst = 0.0;
  for (double x = -700.0; x < 700.0; x += 0.0137) {
    worst = std::max(worst, std::abs(exp_of(x) / std::exp(x) - 1.0));
  }
  for (double x = -2.0; x < 2.0; x += 0.000137) {
    worst = std::max(worst, std::abs(exp_of(x) / std::exp(x) - 1.0));
  }
  MESSAGE("exp off by ", worst);
  CHECK(worst < exact_to);
  CHECK(exp_of(-1.0e300) < 1.0e-300);
  CHECK(exp_of(-1.0e300) >= 0.0);
  CHECK(exp_of(1.0e300) > 1.0e300);
  CHECK(std::isfinite(exp_of(1.0e300)));
}

TEST_CASE("the logarithm of lanes is exact to 1.1e-10") {
  double worst = 0.0;
  for (double x = 1.0e-300; x < 1.0e300; x *= 1.0137) {
    const double exact = std::log(x);
    if (exact != 0.0) worst = std::max(worst, std::abs(log_of(x) / exact - 1.0));
  }
  // Near 1 the logarithm is small, and still as exact.
  for (double far = 1.0e-9; far < 0.6; far *= 1.00137) {
    for (const double x : {1.0 + far, 1.0 - far}) {
      worst = std::max(worst, std::abs(log_of(x) / std::log(x) - 1.0));
    }
  }
  MESSAGE("log off by ", worst);
  CHECK(worst < exact_to);
  CHECK(log_of(1.0) == 0.0);
}

TEST_CASE("powers and roots of lanes follow from them") {
  const auto pow_of = [](double x, double y) {
    return first_lane([y](Lanes a) { return pow(a, Lanes(y)); }, x);
  };
  const auto cbrt_of = [](double x) { return first_lane([](Lanes a) { return cbrt(a); }, x); };
  CHECK(pow_of(3.0, 2.0) == doctest::Approx(9.0).epsilon(1.0e-9));
  CHECK(pow_of(0.01, 0.89) == doctest::Approx(std::pow(0.01, 0.89)).epsilon(1.0e-9));
  CHECK(cbrt_of(27.0) == doctest::Approx(3.0).epsilon(1.0e-9));
  CHECK(cbrt_of(0.0) == 0.0);
}
