#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "properties/slab/random_pour.h"

using namespace slabtide;
using namespace slabtide::fixtures;

// The core solves columns in single precision, with an exponential and a logarithm as exact as
// that. The same steps in doubles and with the C library's are what it is held against.

namespace {

/// The largest moves allowed, ours: of what happens to plastic concrete, and of any event.
constexpr double max_plastic_move_s = 0.1;
constexpr double max_move_s = 0.3;
constexpr double max_move_k = 3.0e-4;
constexpr double max_bleed_move_kg_m2 = 1.0e-4;

double farthest(const std::vector<double>& a, const std::vector<double>& b) {
  double apart = 0.0;
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i)
    apart = std::max(apart, std::abs(a[i] - b[i]));
  return apart;
}

}  // namespace

TEST_CASE("single precision moves no event by more than a fraction of a second") {
  double worst_plastic_s = 0.0;
  double worst_s = 0.0;
  double worst_k = 0.0;
  double worst_kg_m2 = 0.0;
  CHECK(rc::check([&] {
    const PourSketch pour = random_pour();
    const ColumnHistory single = solve(pour).history;
    const ColumnHistory doubles = solve_exactly(pour).history;
    RC_ASSERT(single.time_s.size() == doubles.time_s.size());
    const auto found = all_events_of(single);
    const auto exact = all_events_of(doubles);
    for (std::size_t i = 0; i < found.size(); ++i) {
      RC_ASSERT(found[i].has_value() == exact[i].has_value());
      if (!found[i]) continue;
      double& worst = i < plastic_events ? worst_plastic_s : worst_s;
      worst = std::max(worst, std::abs(*found[i] - *exact[i]));
    }
    worst_s = std::max(worst_s, farthest(single.time_s, doubles.time_s));
    worst_k = std::max({worst_k, farthest(single.surface_c, doubles.surface_c),
                        farthest(single.mean_c, doubles.mean_c),
                        farthest(single.gradient_c, doubles.gradient_c)});
    worst_kg_m2 =
        std::max(worst_kg_m2, farthest(single.bleed_water_kg_m2, doubles.bleed_water_kg_m2));
    RC_ASSERT(worst_plastic_s < max_plastic_move_s);
    RC_ASSERT(worst_s < max_move_s);
    RC_ASSERT(worst_k < max_move_k);
    RC_ASSERT(worst_kg_m2 < max_bleed_move_kg_m2);
  }));
  MESSAGE(
      fmt::format("single precision: plastic events moved by {:.3f} s, later ones by {:.3f} s, "
                  "temperatures by {:.5f} K, bleed water by {:.6f} kg/m2 at worst",
                  worst_plastic_s, worst_s, worst_k, worst_kg_m2));
}
