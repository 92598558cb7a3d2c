#include "slab/column/column_modes.h"

#include <numeric>

#include <doctest/doctest.h>

#include "slab/material/materials.h"
#include "slab/mix/mix_model.h"

using namespace slabtide;

namespace {

struct Made {
  MixModel mix = mix_model(Mix{}, {});
  ColumnCase column;

  Made(double thickness_m, double base_m, bool face) {
    column.thickness_m = thickness_m;
    column.ground_c = 12.0;
    column.concrete_c = 22.0;
    column.mix = &mix;
    column.formed_face = face;
    if (base_m > 0.0) column.below = {{base_m, base_material(BaseKind::gravel)}};
  }
  Made(const Made&) = delete;
  Made& operator=(const Made&) = delete;

  ColumnModes modes() const { return {column, {.keep_profile = true}}; }
};

double sum_over(const std::vector<double>& each, const std::vector<double>& amplitudes) {
  return std::inner_product(each.begin(), each.end(), amplitudes.begin(), 0.0);
}

}  // namespace

TEST_CASE("a column holds the slab, its base and soil to 0.6 m under the slab") {
  const Made made(0.1, 0.15, false);
  CHECK(made.modes().conduction.depth_m() == doctest::Approx(0.7));
  const double slab_j_m2 = 0.1 * made.mix.concrete.heat_capacity_j_m3k * 10.0;
  const ColumnModes modes = made.modes();
  CHECK(sum_over(modes.stored_j_m2, placed_amplitudes(made.column, modes)) ==
        doctest::Approx(slab_j_m2).epsilon(1e-12));
}

TEST_CASE("the ground's temperature runs straight between its points, and stays past them") {
  ColumnCase column;
  column.ground_c = 12.0;
  CHECK(ground_at_c(column, 0.1) == 12.0);
  column.ground = {{0.0, 40.0}, {0.2, 20.0}, {0.6, 10.0}};
  CHECK(ground_at_c(column, 0.0) == 40.0);
  CHECK(ground_at_c(column, 0.05) == doctest::Approx(35.0));
  CHECK(ground_at_c(column, 0.5) == doctest::Approx(12.5));
  CHECK(ground_at_c(column, 0.9) == 10.0);
}

TEST_CASE("a deep base pushes the fixed ground down") {
  CHECK(Made(0.1, 0.5, false).modes().conduction.depth_m() == doctest::Approx(0.1 + 0.8));
}

TEST_CASE("a formed face ends at its middle, insulated") {
  const Made made(0.15, 0.1, true);
  const ColumnModes modes = made.modes();
  CHECK(modes.conduction.depth_m() == doctest::Approx(0.15));
  CHECK(modes.conduction.decay_per_s().front() < 1e-15);  // what is in it stays in it
  CHECK(modes.profile_depth_m.size() == profile_points);
}

TEST_CASE("thick slabs and close points take more modes") {
  CHECK(Made(0.3, 0.1, false).modes().count() > Made(0.1, 0.1, false).modes().count());
  const Made made(0.1, 0.1, false);
  CHECK(made.modes().count() == 14);
  const ColumnModes close(made.column, {.slab_spacing_m = 0.004, .ground_spacing_m = 0.02});
  CHECK(close.count() > 20);
}

TEST_CASE("columns that conduct alike share their modes, others do not") {
  const Made made(0.1, 0.1, false);
  const Made thicker(0.11, 0.1, false);
  const Made deeper(0.1, 0.12, false);
  const Made face(0.1, 0.1, true);
  Made warmer(0.1, 0.1, false);
  warmer.column.concrete_c = 30.0;
  const SolverSettings usual;
  SharedModes shared;
  shared.add(made.column, usual);
  REQUIRE(shared.find(made.column, usual) != nullptr);
  CHECK(shared.find(warmer.column, usual) == shared.find(made.column, usual));
  for (const Made* other : {&thicker, &deeper, &face})
    CHECK(shared.find(other->column, usual) == nullptr);
  CHECK(shared.find(made.column, {.slab_spacing_m = 0.005}) == nullptr);
  CHECK(shared.find(made.column, {.ground_spacing_m = 0.02}) == nullptr);
  CHECK(shared.find(made.column, {.keep_profile = true}) == nullptr);
}

TEST_CASE("probes lie at 5, 20 and 40 mm and in the middle, never past it") {
  const ProbeDepths usual = probe_depths(0.1);
  CHECK(usual.top_m == doctest::Approx(0.005));
  CHECK(usual.work_m == doctest::Approx(0.020));
  CHECK(usual.deep_m == doctest::Approx(0.040));
  CHECK(usual.middle_m == doctest::Approx(0.050));
  const ProbeDepths thin = probe_depths(0.03);
  CHECK(thin.work_m == doctest::Approx(0.015));
  CHECK(thin.deep_m == doctest::Approx(0.015));
}

TEST_CASE("mean and gradient are those of the slab alone") {
  const Made made(0.1, 0.1, false);
  const ColumnModes modes = made.modes();
  // 5 K warmer at the top than at the bottom of the slab, 20 K warmer than the ground in its
  // middle.
  const auto amplitudes = modes.conduction.amplitudes([](std::size_t layer, double x) {
    return layer == 0 ? 20.0 + 5.0 * (0.5 - x / 0.1) : 17.5 * (0.7 - x) / 0.6;
  });
  CHECK(sum_over(modes.in_mean, amplitudes) == doctest::Approx(20.0));
  CHECK(sum_over(modes.in_gradient, amplitudes) == doctest::Approx(5.0));
  for (std::size_t i = 0; i < profile_points; ++i) {
    const double x = modes.profile_depth_m[i];
    CHECK(sum_over(modes.at_profile[i], amplitudes) ==
          doctest::Approx(x < 0.1 ? 20.0 + 5.0 * (0.5 - x / 0.1) : 17.5 * (0.7 - x) / 0.6));
  }
}
