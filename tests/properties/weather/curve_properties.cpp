#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "properties/weather/in_range.h"
#include "weather/forecast/curve.h"

using namespace slabtide;
using slabtide::testing::in_range;

namespace {

constexpr double hour_s = 3600.0;
constexpr int samples = 60;

/// Increasing times, 1, 3 or 6 h apart.
std::vector<double> some_times(std::size_t count) {
  std::vector<double> times_s{0.0};
  while (times_s.size() < count)
    times_s.push_back(times_s.back() + hour_s * *rc::gen::element(1.0, 3.0, 6.0));
  return times_s;
}

std::vector<double> some_values(std::size_t count, double low, double high) {
  std::vector<double> values(count);
  for (double& value : values) value = *rc::gen::inRange(0, 4) == 0 ? low : in_range(low, high);
  return values;
}

std::size_t some_count(int min) { return static_cast<std::size_t>(*rc::gen::inRange(min, 30)); }

/// By Simpson's rule, which is exact for parabolas.
double mean_between(const Curve& curve, double from_s, double to_s) {
  const double inset = 1e-9 * (to_s - from_s);
  return (curve(from_s + inset) + 4.0 * curve((from_s + to_s) / 2.0) + curve(to_s - inset)) / 6.0;
}

}  // namespace

TEST_CASE("a curve never leaves the range of the two points it runs between") {
  CHECK(rc::check([] {
    const std::size_t count = some_count(1);
    const std::vector<double> times_s = some_times(count);
    const std::vector<double> values = some_values(count, -20.0, 40.0);
    const Curve curve = monotone_curve(times_s, values);
    for (std::size_t i = 0; i + 1 < count; ++i) {
      const auto [low, high] = std::minmax(values[i], values[i + 1]);
      for (int k = 0; k <= samples; ++k) {
        const double value = curve(std::lerp(times_s[i], times_s[i + 1], 1.0 * k / samples));
        RC_ASSERT(value >= low - 1e-9);
        RC_ASSERT(value <= high + 1e-9);
      }
    }
  }));
}

TEST_CASE("a flow keeps every mean and is never negative") {
  CHECK(rc::check([] {
    const std::size_t count = some_count(1);
    const std::vector<double> edges_s = some_times(count + 1);
    const std::vector<double> means = some_values(count, 0.0, 1000.0);
    const Curve flow = mean_keeping_curve(edges_s, means);
    for (std::size_t i = 0; i < count; ++i) {
      RC_ASSERT(std::abs(mean_between(flow, edges_s[i], edges_s[i + 1]) - means[i]) < 1e-4);
      for (int k = 0; k <= samples; ++k) {
        RC_ASSERT(flow(std::lerp(edges_s[i], edges_s[i + 1], 1.0 * k / samples)) >= 0.0);
      }
    }
  }));
}
