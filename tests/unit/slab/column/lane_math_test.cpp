#include <array>
#include <cmath>
#include <cstddef>

#include <doctest/doctest.h>

#include "slab/column/lanes-inl.h"
#include "slab/process/conduction-inl.h"

// With the narrowest instruction set of the machine's kind; column_core_test.cpp holds the others
// against each other. The C library's functions are taken for exact.

namespace {

using slabtide::HWY_NAMESPACE::Lanes;
using slabtide::HWY_NAMESPACE::Memory;

/// The first lane of what `function` makes of x in all of them.
template <class Function>
double first_lane(Function function, double x) {
  HWY_ALIGN std::array<float, Memory<Lanes>::columns> lanes;
  Memory<Lanes>::store(function(Lanes(x)), lanes.data());
  return static_cast<double>(lanes[0]);
}

double exp_of(double x) {
  return first_lane([](Lanes a) { return exp(a); }, x);
}
double log_of(double x) {
  return first_lane([](Lanes a) { return log(a); }, x);
}

constexpr double exact_to = 2.0e-7;  // single precision itself: 0.6e-7

}  // namespace

TEST_CASE("the exponential of lanes is exact to 2e-7") {
  double worst = 0.0;
  const auto look_at = [&worst](float x) {
    const auto exact = std::exp(static_cast<double>(x));
    worst = std::max(worst, std::abs(exp_of(static_cast<double>(x)) / exact - 1.0));
  };
  for (float x = -85.0F; x < 85.0F; x += 0.00137F) look_at(x);
  for (float x = -2.0F; x < 2.0F; x += 0.000137F) look_at(x);
  MESSAGE("exp off by ", worst);
  CHECK(worst < exact_to);
  CHECK(exp_of(-1.0e30) < 1.0e-37);
  CHECK(exp_of(-1.0e30) >= 0.0);
  CHECK(exp_of(1.0e30) > 1.0e37);
  CHECK(std::isfinite(exp_of(1.0e30)));
}

TEST_CASE("the logarithm of lanes is exact to 2e-7 of itself") {
  double worst = 0.0;
  const auto look_at = [&worst](float x) {
    const auto exact = std::log(static_cast<double>(x));
    if (exact != 0.0)
      worst = std::max(worst, std::abs(log_of(static_cast<double>(x)) / exact - 1.0));
  };
  for (float x = 1.0e-37F; x < 1.0e37F; x *= 1.00137F) look_at(x);
  // Near 1 the logarithm is small, and still as exact.
  for (float far = 1.0e-6F; far < 0.6F; far *= 1.00137F) {
    look_at(1.0F + far);
    look_at(1.0F - far);
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
  CHECK(pow_of(3.0, 2.0) == doctest::Approx(9.0).epsilon(1.0e-6));
  CHECK(pow_of(0.01, 0.89) == doctest::Approx(std::pow(0.01, 0.89)).epsilon(1.0e-6));
  CHECK(cbrt_of(27.0) == doctest::Approx(3.0).epsilon(1.0e-6));
  CHECK(cbrt_of(0.0) == 0.0);
}

TEST_CASE("what fades in a step is as exact, however slowly or fast it fades") {
  using slabtide::HWY_NAMESPACE::fading;
  double worst = 0.0;
  for (float x = 1.0e-8F; x < 1.0e9F; x *= 1.0137F) {
    const auto exact = fading(static_cast<double>(x));
    const auto look_at = [&](auto part, double of_exact) {
      const double found =
          first_lane([part](Lanes a) { return part(fading(a)); }, static_cast<double>(x));
      worst = std::max(worst, std::abs(found - of_exact) / std::max(of_exact, 1.0e-9));
    };
    look_at([](const auto& left) { return left.kept; }, exact.kept);
    look_at([](const auto& left) { return left.mean; }, exact.mean);
    look_at([](const auto& left) { return left.late; }, exact.late);
  }
  MESSAGE("fading off by ", worst);
  CHECK(worst < 1.0e-6);
}
