#include <cmath>

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include "day/field/belief.h"
#include "slabtide/day/windows/band.h"

namespace slabtide {
namespace {

double real(double low, double high) {
  constexpr int steps = 100000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

Belief::Line some_line() {
  Belief::Line line;
  line.level = real(-100.0, 100.0);
  for (double& slope : line.slope) slope = real(-50.0, 50.0);
  line.rest_variance = real(0.0, 10.0);
  return line;
}

TEST_CASE("whatever is seen, nothing is believed less surely than before") {
  CHECK(rc::check([] {
    Belief belief;
    const Belief::Line asked = some_line();
    double last = belief.expect(asked).variance;
    for (int i = 0; i < 5; ++i) {
      belief.see(some_line(), real(-500.0, 500.0), real(0.01, 100.0));
      const double now = belief.expect(asked).variance;
      RC_ASSERT(now <= last * (1.0 + 1e-9));
      RC_ASSERT(now >= 0.0);
      last = now;
    }
  }));
}

TEST_CASE("points drawn about a belief are figures, and likeliest at its middle") {
  CHECK(rc::check([] {
    Belief belief;
    for (int i = 0; i < 10; ++i) belief.see(some_line(), real(-500.0, 500.0), 0.01);
    const UncertainInputs middle = belief.moved({}, 1.1);
    UncertainInputs standard;
    for (double& z : standard.z) z = real(-2.5, 2.5);
    const UncertainInputs off = belief.moved(standard, 1.1);
    for (const double z : off.z) RC_ASSERT(std::isfinite(z));
    RC_ASSERT(std::isfinite(belief.log_density(off, 1.1)));
    RC_ASSERT(belief.log_density(middle, 1.1) >= belief.log_density(off, 1.1));
  }));
}

TEST_CASE("a line through days on a line is that line") {
  CHECK(rc::check([] {
    const Belief::Line truth = some_line();
    const std::vector<UncertainInputs> days = even_uncertain_inputs(200);
    std::vector<double> figures;
    for (const UncertainInputs& day : days) {
      double figure = truth.level;
      for (std::size_t k = 0; k < uncertain_input_count; ++k) figure += truth.slope[k] * day.z[k];
      figures.push_back(figure);
    }
    const Belief::Line fitted = fit_line(days, figures);
    RC_ASSERT(std::abs(fitted.level - truth.level) < 2.0);
    // As many days as a plan draws; slopes are shrunk toward 0 as by one day more.
    for (std::size_t k = 0; k < uncertain_input_count; ++k) {
      RC_ASSERT(std::abs(fitted.slope[k] - truth.slope[k]) < 3.0);
    }
  }));
}

TEST_CASE("quantiles rise with their share and lie within the values") {
  CHECK(rc::check([] {
    std::vector<Weighted> values;
    const int count = *rc::gen::inRange(1, 30);
    for (int i = 0; i < count; ++i) values.push_back({real(-10.0, 10.0), real(0.01, 1.0)});
    double last = -10.0;
    for (const double fraction : {0.1, 0.3, 0.5, 0.7, 0.9}) {
      const auto at = weighted_quantile(values, fraction);
      RC_ASSERT(at.has_value());
      RC_ASSERT(*at >= last);
      RC_ASSERT(*at <= 10.0);
      last = *at;
    }
  }));
}

}  // namespace
}  // namespace slabtide
