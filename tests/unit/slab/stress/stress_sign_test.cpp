#include <doctest/doctest.h>

#include "unit/slab/slab_fixtures.h"

#include "slabtide/slab/stress/stress.h"

// Warming presses a slab together, cooling pulls it apart, and curling does both, one at each
// face. Figures worked by hand: E through the step 57000 (sqrt 100 + sqrt 400)/2 psi, E alpha
// 8.4645 psi/K, of which 0.66801 are left when it ends
// (stress_test.cpp), f_t 66.377 psi, C 1.000 for 12 m at l 0.358
// m; curling by 5 K: 21.161 psi; friction holds 30.082 psi.

using namespace slabtide;
using fixtures::long_free;
using fixtures::long_tied;

namespace {

/// At final set, and after the mean and the gradient (top minus bottom) have risen by these
/// amounts.
ColumnHistory warmed(double mean_k, double gradient_k) {
  ColumnHistory h;
  h.time_s = {0.0, 3600.0};
  h.resistance_middle_psi = {4000.0, 20000.0};
  h.set_age_middle_h = {5.5, 6.5};
  h.strength_psi = {100.0, 400.0};
  h.mean_c = {20.0, 20.0 + mean_k};
  h.gradient_c = {1.0, 1.0 + gradient_k};
  return h;
}

double ratio(double mean_k, double gradient_k, const StressCase& piece) {
  MixModel mix;
  mix.expansion_per_k = 9.9e-6;
  mix.setting = {.initial_set_h = 4.25, .final_set_h = 5.5};
  return stress_ratio(warmed(mean_k, gradient_k), mix, piece).back();
}

}  // namespace

TEST_CASE("a slab the sun warms after final set is pressed: curling has that to overcome first") {
  // (21.161 - 8.4645) 0.66801/66.377 free; tied 0.8 of 8.4645.
  CHECK(ratio(1.0, 5.0, long_free) == doctest::Approx(0.1278).epsilon(3e-3));
  CHECK(ratio(1.0, 5.0, long_tied) == doctest::Approx(0.1448).epsilon(3e-3));
}

TEST_CASE("warmed well through, neither face is in tension") {
  CHECK(ratio(10.0, 5.0, long_tied) == 0.0);
  CHECK(ratio(10.0, 5.0, long_free) == 0.0);  // friction compresses more than curling pulls
}

TEST_CASE("a free slab is pressed no harder than friction can") {
  // Curling by 15 K is 63.483 psi, of which 42.407 are left, less 30.082.
  CHECK(ratio(10.0, 15.0, long_free) == doctest::Approx(0.1857).epsilon(5e-3));
  CHECK(ratio(30.0, 15.0, long_free) == doctest::Approx(ratio(10.0, 15.0, long_free)));
}

TEST_CASE("cooling adds to the face that curling pulls, whichever it is") {
  // (21.161 + 8.4645) 0.66801/66.377.
  CHECK(ratio(-1.0, -5.0, long_free) == doctest::Approx(0.2981).epsilon(3e-3));
  CHECK(ratio(-1.0, 5.0, long_free) == doctest::Approx(0.2981).epsilon(3e-3));
}
