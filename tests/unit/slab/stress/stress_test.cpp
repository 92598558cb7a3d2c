#include "slabtide/slab/stress/stress.h"

#include <limits>
#include <stdexcept>

#include <doctest/doctest.h>

#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using fixtures::long_free;
using fixtures::long_tied;

namespace {

/// Three instants: before final set, at final set, and cooled by the given amounts since then.
ColumnHistory cooled(double mean_k, double gradient_k) {
  ColumnHistory h;
  h.time_s = {0.0, 3600.0, 7200.0};
  h.resistance_middle_psi = {1000.0, 4000.0, 20000.0};
  h.strength_psi = {50.0, 100.0, 400.0};
  h.mean_c = {28.0, 30.0, 30.0 - mean_k};
  h.gradient_c = {0.0, 3.0, 3.0 - gradient_k};
  return h;
}

MixModel unknown_aggregate() {
  MixModel mix;
  mix.expansion_per_k = 9.9e-6;
  return mix;
}

double last(const ColumnHistory& h, const StressCase& piece) {
  return stress_ratio(h, unknown_aggregate(), piece).back();
}

}  // namespace

TEST_CASE("a tied slab that has cooled 10 K, worked by hand") {
  // E 57000 sqrt 400 = 1.14e6 psi; 0.8 E 9.9e-6 10 = 90.288 psi, x 0.65 = 58.687;
  // f_t = 0.584 400^0.79 = 66.377 psi.
  CHECK(last(cooled(10.0, 0.0), long_tied) == doctest::Approx(0.88415).epsilon(1e-4));
}

TEST_CASE("a free slab is held by no more than friction") {
  // 2350 9.80665 1.5 12/2 = 207.41 kPa = 30.082 psi, x 0.65 = 19.554; restraint would be 112.9.
  CHECK(last(cooled(10.0, 0.0), long_free) == doctest::Approx(0.29459).epsilon(1e-4));
  // Cooled by 1 K the restraint is smaller: 1.14e6 9.9e-6 = 11.286 psi.
  CHECK(last(cooled(1.0, 0.0), long_free) == doctest::Approx(0.11052).epsilon(1e-4));
}

TEST_CASE("a curled slab, worked by hand") {
  // l = (1.14e6 psi h3/(12 0.9775 40.7e6 Pa/m))^(1/4) = 0.35820 m; 12 m: L/l 33.5, C 1.0000;
  // 0.5 1.14e6 9.9e-6 5 = 28.215 psi, x 0.65 = 18.340.
  CHECK(last(cooled(0.0, 5.0), long_free) == doctest::Approx(0.2763).epsilon(2e-3));
}

TEST_CASE("curling tears at the top or at the bottom alike") {
  CHECK(last(cooled(0.0, -5.0), long_free) == doctest::Approx(last(cooled(0.0, 5.0), long_free)));
}

TEST_CASE("a slab that has warmed does not shorten") {
  CHECK(last(cooled(-5.0, 0.0), long_tied) == 0.0);
}

TEST_CASE("a re-entrant corner counts half as much again") {
  StressCase corner = long_tied;
  corner.re_entrant_corner = true;
  CHECK(last(cooled(10.0, 2.0), corner) ==
        doctest::Approx(1.5 * last(cooled(10.0, 2.0), long_tied)));
}

TEST_CASE("cutting shorter pieces relieves a free slab") {
  StressCase cut = long_free;
  cut.uncut_length_m = 1.5;
  CHECK(last(cooled(10.0, 3.0), cut) < 0.7 * last(cooled(10.0, 3.0), long_free));
}

TEST_CASE("there is no stress at or before final set, nor without it") {
  const auto ratio = stress_ratio(cooled(10.0, 5.0), unknown_aggregate(), long_tied);
  CHECK(ratio[0] == 0.0);
  CHECK(ratio[1] == 0.0);
  CHECK(ratio[2] > 0.0);
  ColumnHistory soft = cooled(10.0, 5.0);
  soft.resistance_middle_psi = {10.0, 100.0, 3999.0};
  for (const double r : stress_ratio(soft, unknown_aggregate(), long_tied)) CHECK(r == 0.0);
  CHECK(stress_ratio(ColumnHistory{}, unknown_aggregate(), long_tied).empty());
}

TEST_CASE("a piece without length or thickness is refused") {
  const ColumnHistory h = cooled(1.0, 1.0);
  CHECK_THROWS_AS(stress_ratio(h, unknown_aggregate(), {.uncut_length_m = 0.0, .thickness_m = 0.1}),
                  std::invalid_argument);
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(stress_ratio(h, unknown_aggregate(), {.uncut_length_m = 3.0, .thickness_m = nan}),
                  std::invalid_argument);
}
