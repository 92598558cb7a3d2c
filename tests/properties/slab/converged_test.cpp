#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "properties/slab/random_pour.h"

using namespace slabtide;
using namespace slabtide::fixtures;

// The error from the solver's few points and long steps: compared with the same column with points
// and steps so close that halving them again changes nothing by more than a second or two.

namespace {

constexpr SolverSettings converged{
    .early_step_s = 20.0, .late_step_s = 60.0, .slab_spacing_m = 0.002, .ground_spacing_m = 0.01};

/// The largest error allowed; ours: a third of the resolution of a plan.
constexpr double max_error_s = 20.0;

double apart_s(const std::optional<double>& a, const std::optional<double>& b) {
  return a && b ? std::abs(*a - *b) : 0.0;
}

/// When the top 5 mm takes a print, which follows the weather most closely.
std::optional<double> top_print_s(const ColumnHistory& h) {
  return first_reached(h.time_s, h.resistance_top_psi, 40.0);
}

}  // namespace

TEST_CASE("print, initial and final set are within 20 s of the converged solution") {
  std::array<double, 4> worst_s{};
  CHECK(rc::check([&worst_s] {
    const PourSketch pour = random_pour();
    const ColumnHistory usual = solve(pour).history;
    const ColumnHistory fine = solve_exactly(pour, converged).history;
    const Events found = events_of(usual);
    const Events exact = events_of(fine);
    std::array<double, 4> apart{};
    for (std::size_t i = 0; i < found.size(); ++i) apart[i] = apart_s(found[i], exact[i]);
    apart[3] = apart_s(top_print_s(usual), top_print_s(fine));
    for (std::size_t i = 0; i < apart.size(); ++i) {
      worst_s[i] = std::max(worst_s[i], apart[i]);
      RC_ASSERT(apart[i] < max_error_s);
    }
  }));
  MESSAGE(fmt::format(
      "farthest from converged: print {:.1f} s, initial set {:.1f} s, final set {:.1f} s, print "
      "at 5 mm {:.1f} s",
      worst_s[0], worst_s[1], worst_s[2], worst_s[3]));
}
