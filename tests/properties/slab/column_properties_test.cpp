#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

#include <doctest/doctest.h>
#include <fmt/format.h>
#include "slab/column/column_modes.h"
#include "slab/material/materials.h"
#include "slab/mix/mix_model.h"

#include "properties/slab/random_pour.h"

using namespace slabtide;
using namespace slabtide::fixtures;

namespace {

constexpr double rounding_s = 1.0;  // of times read from a history with entries every 2 min

/// No event of `later` is before that of `sooner`.
bool never_earlier(const Events& later, const Events& sooner) {
  for (std::size_t i = 0; i < later.size(); ++i) {
    if (!later[i]) continue;  // not within the forecast, so after everything
    if (!sooner[i] || *later[i] < *sooner[i] - rounding_s) return false;
  }
  return true;
}

/// Changing a pour by `change` never delays an event.
bool never_later(const std::function<void(PourSketch&)>& change) {
  return rc::check([&] {
    PourSketch pour = random_pour();
    const Events before = events_of(solve(pour).history);
    change(pour);
    const Events after = events_of(solve(pour).history);
    RC_ASSERT(never_earlier(before, after));
  });
}

Admixture shifted_by(AdmixtureKind kind, double hours) {
  Admixture admixture;
  admixture.kind = kind;
  admixture.shift_h = hours;
  return admixture;
}

/// In through the fixed bottom, half a spacing of the profile below its lowest depth.
double through_the_bottom_j_m2(const PourSketch& pour, const ColumnSolution& solution) {
  const std::vector<double>& time_s = solution.history.time_s;
  const std::size_t depths = solution.profile_c.size() / time_s.size();
  const double spacing_m = fixed_ground_below_slab_m / (2.0 * profile_points / 3.0);
  const auto w_m2 = [&](std::size_t row) {
    const double lowest_c = solution.profile_c[(row + 1) * depths - 1];
    return soil_material().conductivity_w_mk * (pour.ground_c - lowest_c) / (0.5 * spacing_m);
  };
  double sum_j_m2 = 0.0;
  for (std::size_t i = 1; i < time_s.size(); ++i)
    sum_j_m2 += 0.5 * (w_m2(i - 1) + w_m2(i)) * (time_s[i] - time_s[i - 1]);
  return sum_j_m2;
}

bool rises(const std::vector<double>& values) {
  return std::is_sorted(values.begin(), values.end());
}

}  // namespace

TEST_CASE("warmer concrete never sets later") {
  CHECK(never_later([](PourSketch& pour) { pour.concrete_c += uniform(0.0, 8.0); }));
}

TEST_CASE("warmer air never makes it set later") {
  CHECK(never_later([](PourSketch& pour) {
    const double warmer_k = uniform(0.0, 8.0);
    pour.day.high_c += warmer_k;
    pour.day.low_c += warmer_k;
  }));
}

TEST_CASE("more sun never makes it set later") {
  CHECK(never_later([](PourSketch& pour) { pour.noon_w_m2 += uniform(0.0, 300.0); }));
}

TEST_CASE("a darker slab in the sun never sets later") {
  CHECK(never_later([](PourSketch& pour) { pour.absorptance += uniform(0.0, 0.2); }));
}

TEST_CASE("warmer ground never makes it set later") {
  CHECK(never_later([](PourSketch& pour) { pour.ground_c += uniform(0.0, 8.0); }));
}

TEST_CASE("an accelerator never makes it set later") {
  CHECK(never_later([](PourSketch& pour) {
    pour.admixtures = {shifted_by(AdmixtureKind::accelerator_non_chloride, -uniform(0.0, 2.0))};
  }));
}

TEST_CASE("a retarder never makes it set earlier") {
  CHECK(rc::check([] {
    PourSketch pour = random_pour();
    const Events plain = events_of(solve(pour).history);
    pour.admixtures = {shifted_by(AdmixtureKind::retarder, uniform(0.0, 3.5))};
    RC_ASSERT(never_earlier(events_of(solve(pour).history), plain));
  }));
}

TEST_CASE("a formed face keeps all heat that comes in or is released") {
  const auto left_open = [](const ColumnEnergy& e) {
    return std::abs(e.surface_j_m2 + e.source_j_m2 - e.stored_j_m2) /
           (std::abs(e.surface_j_m2) + std::abs(e.source_j_m2));
  };
  double worst = 0.0;
  double worst_in_doubles = 0.0;
  CHECK(rc::check([&] {
    PourSketch pour = random_pour();
    pour.formed_face = true;
    if (*rc::gen::inRange(0, 3) == 0)
      pour.covers = {{uniform(0.0, 3e4), uniform(3e4, 1e5), uniform(0.0, 1.0), true}};
    worst = std::max(worst, left_open(solve(pour).energy));
    worst_in_doubles = std::max(worst_in_doubles, left_open(solve_exactly(pour).energy));
    RC_ASSERT(worst < 5.0e-6);  // hundreds of sums in single precision
    RC_ASSERT(worst_in_doubles < 1.0e-9);
  }));
  MESSAGE(fmt::format("worst energy left open: {:.1e} of what moved, in doubles {:.1e}", worst,
                      worst_in_doubles));
}

// Fourier's law at the lowest two depths of the profile, 8 to 25 mm above the bottom: a fifth of a
// percent of what moved is what a straight line between them leaves out.
TEST_CASE("what a slab stores beyond its surface and its hydration has come from the ground") {
  double worst = 0.0;
  CHECK(rc::check([&worst] {
    PourSketch pour = random_pour();
    if (*rc::gen::inRange(0, 3) == 0) pour.curing_compound_from_set_age_h = uniform(2.0, 6.0);
    const ColumnSolution solution = solve(pour, {.keep_profile = true});
    const ColumnEnergy& e = solution.energy;
    const double ground_j_m2 = through_the_bottom_j_m2(pour, solution);
    const double moved = std::abs(e.surface_j_m2) + std::abs(ground_j_m2) + std::abs(e.source_j_m2);
    const double open = e.surface_j_m2 + ground_j_m2 + e.source_j_m2 - e.stored_j_m2;
    worst = std::max(worst, std::abs(open) / moved);
    RC_ASSERT(std::abs(open) < 2.0e-3 * moved);
  }));
  MESSAGE(fmt::format("worst energy left open: {:.1e} of what moved", worst));
}

TEST_CASE("halving steps and spacing moves set times by under 20 s") {
  double worst_s = 0.0;
  CHECK(rc::check([&worst_s] {
    const PourSketch pour = random_pour();
    const SolverSettings usual;
    SolverSettings halved = usual;
    halved.early_step_s /= 2.0;
    halved.late_step_s /= 2.0;
    halved.slab_spacing_m /= 2.0;
    halved.ground_spacing_m /= 2.0;
    const Events coarse = events_of(solve(pour, usual).history);
    const Events fine = events_of(solve(pour, halved).history);
    for (std::size_t i = 0; i < coarse.size(); ++i) {
      if (!coarse[i] || !fine[i]) continue;
      worst_s = std::max(worst_s, std::abs(*coarse[i] - *fine[i]));
      RC_ASSERT(std::abs(*coarse[i] - *fine[i]) < 20.0);
    }
  }));
  MESSAGE(fmt::format("worst move of a print, initial or final set: {:.1f} s", worst_s));
}

TEST_CASE("time, set age, resistance and strength never fall") {
  CHECK(rc::check([] {
    const ColumnHistory h = solve(random_pour()).history;
    for (const auto* each : {&h.time_s, &h.set_age_work_h, &h.set_age_middle_h,
                             &h.resistance_top_psi, &h.resistance_work_psi, &h.resistance_deep_psi,
                             &h.resistance_middle_psi, &h.strength_psi}) {
      RC_ASSERT(rises(*each));
    }
  }));
}

TEST_CASE("water on top is never negative and never more than has bled") {
  CHECK(rc::check([] {
    const PourSketch pour = random_pour();
    const ColumnHistory h = solve(pour).history;
    const double bleed = mix_model(pour.mix, {}).bleed_kg_m2_per_mm * pour.thickness_m * 1000.0;
    for (std::size_t i = 0; i < h.time_s.size(); ++i) {
      RC_ASSERT(h.evaporation_kg_m2_h[i] >= 0.0);
      RC_ASSERT(h.bleed_kg_m2_h[i] >= 0.0);
      RC_ASSERT(h.bleed_water_kg_m2[i] >= 0.0);
      RC_ASSERT(h.bleed_water_kg_m2[i] <= bleed + 1e-12);
    }
  }));
}
