#include "slabtide/slab/stress/stress.h"

#include <limits>
#include <stdexcept>
#include <vector>

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
  h.set_age_middle_h = {4.5, 5.5, 6.5};
  h.strength_psi = {50.0, 100.0, 400.0};
  h.mean_c = {28.0, 30.0, 30.0 - mean_k};
  h.gradient_c = {0.0, 3.0, 3.0 - gradient_k};
  return h;
}

MixModel unknown_aggregate() {
  MixModel mix;
  mix.expansion_per_k = 9.9e-6;
  mix.setting = {.initial_set_h = 4.25, .final_set_h = 5.5};
  return mix;
}

double last(const ColumnHistory& h, const StressCase& piece) {
  return stress_ratio(h, unknown_aggregate(), piece).back();
}

}  // namespace

TEST_CASE("a tied slab that has cooled 10 K, worked by hand") {
  // E through the step 57000 (sqrt 100 + sqrt 400)/2 = 0.855e6 psi = 5895 MPa; 0.8 E 9.9e-6 10 =
  // 67.716 psi. Half an hour after final set, at 6 h of age, E dJ = 5895 128.9e-6 0.205 0.25^-0.4
  // 6/0.5 = 3.255 in a day, 1.074 in an hour, which loses 0.7226 and 0.4622: the parts that fade
  // are 0.2309 (8 h) and 0.5031 (half an hour). Half an hour later 0.6680 is left; f_t = 0.584
  // 400^0.79 = 66.377 psi.
  CHECK(last(cooled(10.0, 0.0), long_tied) == doctest::Approx(0.68148).epsilon(1e-4));
}

TEST_CASE("a free slab is held by no more than friction") {
  // 2350 9.80665 1.5 12/2 = 207.41 kPa = 30.082 psi; restraint would be 56.5.
  CHECK(last(cooled(10.0, 0.0), long_free) == doctest::Approx(0.45320).epsilon(1e-4));
  // Cooled by 1 K restraint is the lesser: 0.855e6 9.9e-6 = 8.4645 psi, x 0.6680.
  CHECK(last(cooled(1.0, 0.0), long_free) == doctest::Approx(0.08519).epsilon(1e-4));
}

TEST_CASE("a curled slab, worked by hand") {
  // l = (1.14e6 psi h3/(12 0.9775 40.7e6 Pa/m))^(1/4) = 0.35820 m; 12 m: L/l 33.5, C 1.0000;
  // 0.5 0.855e6 9.9e-6 5 = 21.161 psi, x 0.6680.
  CHECK(last(cooled(0.0, 5.0), long_free) == doctest::Approx(0.2130).epsilon(2e-3));
}

/// Cooled by 10 K all at once so long after final set, then held at that for so long; of one
/// strength.
double held_ratio(double since_set_h, double hours) {
  ColumnHistory h = cooled(10.0, 0.0);
  h.strength_psi = {400.0, 400.0, 400.0};
  h.mean_c = {30.0, 30.0, 30.0};
  h.time_s.back() = h.time_s[1] + 3600.0 * since_set_h;
  h.set_age_middle_h.back() = h.set_age_middle_h[1] + since_set_h;
  for (const double later_s : {0.001, 3600.0 * hours}) {
    h.time_s.push_back(h.time_s.back() + later_s);
    h.set_age_middle_h.push_back(h.set_age_middle_h.back() + later_s / 3600.0);
    h.mean_c.push_back(20.0);
    for (auto* each : {&h.resistance_middle_psi, &h.strength_psi, &h.gradient_c}) {
      each->push_back(each->back());
    }
  }
  return last(h, long_tied);
}

TEST_CASE("the younger concrete is when it is strained, the more of the stress fades") {
  // E 1.14e6 psi; E dJ in a day at half an hour, 4 h and a day after final set 4.34, 0.711, 0.236.
  const auto left = [](double since_set_h, double hours) {
    return held_ratio(since_set_h, hours) / held_ratio(since_set_h, 1e-6);
  };
  CHECK(left(0.5, 1.0) == doctest::Approx(0.4661).epsilon(1e-3));
  CHECK(left(0.5, 24.0) == doctest::Approx(0.2236).epsilon(1e-3));
  CHECK(left(4.0, 1.0) == doctest::Approx(0.8413).epsilon(1e-3));
  CHECK(left(4.0, 24.0) == doctest::Approx(0.6362).epsilon(1e-3));
  CHECK(left(24.0, 1.0) == doctest::Approx(0.9416).epsilon(1e-3));
  CHECK(left(24.0, 24.0) == doctest::Approx(0.8417).epsilon(1e-3));
  CHECK(held_ratio(0.001, 24.0) < 0.02 * held_ratio(24.0, 24.0));
}

TEST_CASE("a slab that warmed while weak and cools back while strong is in tension") {
  ColumnHistory h;
  h.time_s = {0.0, 3600.0, 7200.0};
  h.resistance_middle_psi = {4000.0, 20000.0, 40000.0};
  h.set_age_middle_h = {5.5, 6.5, 7.5};
  h.strength_psi = {100.0, 100.0, 900.0};
  h.mean_c = {20.0, 30.0, 20.0};
  h.gradient_c = {0.0, 0.0, 0.0};
  // 0.8 9.9e-6 10 = 7.92e-5: pressed by 0.57e6 psi of E, of which 0.5888 are left an hour and a
  // half later, then pulled by 1.14e6, x 0.7910: 44.83 psi; f_t = 0.584 900^0.79 = 125.97 psi.
  CHECK(last(h, long_tied) == doctest::Approx(0.3559).epsilon(1e-3));
}

TEST_CASE(
    "what friction cannot hold slips for good: warmed and cooled back, a free slab is pulled") {
  ColumnHistory h;
  h.time_s = {0.0, 3600.0, 7200.0};
  h.resistance_middle_psi = {4000.0, 20000.0, 40000.0};
  h.set_age_middle_h = {5.5, 6.5, 7.5};
  h.strength_psi = {400.0, 400.0, 400.0};
  h.mean_c = {20.0, 30.0, 20.0};
  h.gradient_c = {0.0, 0.0, 0.0};
  // Pressed to 30.082 psi, of which 19.83 are left; cooling pulls by 89.27, held to 30.082.
  CHECK(last(h, long_free) == doctest::Approx(0.45320).epsilon(1e-3));
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

TEST_CASE("several levels are reached when each is by itself, whatever their order") {
  ColumnHistory h = cooled(10.0, 0.0);  // up to 0.68, and over 0.5 an hour later
  h.time_s.push_back(10800.0);
  h.set_age_middle_h.push_back(7.5);
  h.mean_c.push_back(15.0);
  for (auto* each : {&h.resistance_middle_psi, &h.strength_psi, &h.gradient_c}) {
    each->push_back(each->back());
  }
  const std::vector<double> levels{0.5, 0.2, 2.0};
  const auto reached = stress_reaches_s(h, unknown_aggregate(), long_tied, levels);
  REQUIRE(reached.size() == levels.size());
  for (std::size_t i = 0; i < levels.size(); ++i) {
    CHECK(reached[i] == stress_reaches_s(h, unknown_aggregate(), long_tied, levels[i]));
  }
  CHECK(*reached[1] < *reached[0]);
  CHECK(!reached[2]);
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
