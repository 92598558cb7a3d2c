#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include <doctest/doctest.h>
#include <fmt/format.h>

#include "published/published_row.h"
#include "slab/column/column_steps.h"
#include "slab/process/conduction.h"
#include "support/conduction_column.h"

using namespace slabtide;
using namespace slabtide::test;

namespace published_conduction_exact {

// Transient conduction, diffusivity 1e-6 m2/s, k 2 W/mK: closed forms in Carslaw & Jaeger,
// Conduction of Heat in Solids (1959), evaluated independently of this program. A closed form is
// exact, but a solution in steps of time and depth is not. The aim, set before it was written, is
// 0.02 K for a surface step of 30 K, a fiftieth of the error of the best forecast of air.

namespace {

constexpr ThermalMaterial material{.conductivity_w_mk = 2.0, .heat_capacity_j_m3k = 2.0e6};
constexpr double step_s = 60.0;  // as in the solver's early steps
constexpr double step_k = 30.0;  // the tolerance is stated for a step of this height

constexpr double aim_k = 0.02;
constexpr const char* aim = "the solver's aim: 0.02 K of 30";

constexpr Published fraction_of_step{.what = "conduction, closed forms",
                                     .source = "Carslaw & Jaeger 1959",
                                     .status = "published",
                                     .tolerance = aim_k / step_k,
                                     .unit = "of the step",
                                     .because = aim};
constexpr Published kelvin{.what = "conduction under a flux",
                           .source = "Carslaw & Jaeger 1959",
                           .status = "published",
                           .tolerance = aim_k,
                           .unit = "K",
                           .because = aim};

/// Divided on top as the solver divides a slab, its base and the soil; three metres deep.
ConductionColumn deep_column(double start_c) {
  ConductionColumn column(
      {{{0.1, material}, 6}, {{0.1, material}, 3}, {{0.5, material}, 5}, {{2.3, material}, 7}},
      BottomKind::insulated, start_c, [start_c](std::size_t, double) { return start_c; });
  column.set_step(step_s);
  return column;
}

/// So many steps, the first taken in several that grow, as the solver takes it.
void take_steps(ConductionColumn& column, const SurfaceLaw& law, int steps, double length_s) {
  for (int i = 0; i < first_steps; ++i) {
    column.set_step(length_s * fraction_of_early_step(i));
    column.step(law);
  }
  column.set_step(length_s);
  for (int i = 1; i < steps; ++i) column.step(law);
}

void run(ConductionColumn& column, const SurfaceLaw& law, double hours) {
  take_steps(column, law, static_cast<int>(std::lround(hours * 3600.0 / step_s)), step_s);
}

/// Held at a temperature, through a film resistance too small to matter. No heat can be balanced
/// with it before the first step, which begins with none.
struct Held {
  double at_c;
  SurfaceFlux operator()(double outer_c) const {
    constexpr double h = 1.0e9;
    return {h * (at_c - outer_c), -h};
  }
};

struct Film {
  double h_w_m2k;
  double air_c;
  SurfaceFlux operator()(double outer_c) const { return {h_w_m2k * (air_c - outer_c), -h_w_m2k}; }
};

struct Constant {
  double w_m2;
  SurfaceFlux operator()(double) const { return {w_m2, 0.0}; }
};

}  // namespace

TEST_CASE("a step of the surface temperature goes in as erfc does") {
  for (const auto& [depth_m, hours, fraction] :
       {std::array{0.05, 1.0, 0.55568979}, std::array{0.1, 24.0, 0.80989413}}) {
    ConductionColumn column = deep_column(0.0);
    run(column, Held{step_k}, hours);
    check_row(fraction_of_step, fmt::format("surface step, {} m, {} h", depth_m, hours), fraction,
              column.at_c(depth_m) / step_k);
  }
}

TEST_CASE("a film of 15 W/m2K warms the surface and the depth") {
  ConductionColumn column = deep_column(0.0);
  column.settle_surface(Film{15.0, step_k});
  run(column, Film{15.0, step_k}, 1.0);
  check_row(fraction_of_step, "film, surface, 1 h", 0.35774830, column.surface_c() / step_k);
  column = deep_column(0.0);
  column.settle_surface(Film{15.0, step_k});
  run(column, Film{15.0, step_k}, 6.0);
  check_row(fraction_of_step, "film, 0.1 m, 6 h", 0.33537590, column.at_c(0.1) / step_k);
}

TEST_CASE("a constant flux of 500 W/m2 warms the surface and the depth") {
  ConductionColumn column = deep_column(0.0);
  column.settle_surface(Constant{500.0});
  run(column, Constant{500.0}, 1.0);
  check_row(kelvin, "flux, surface, 1 h", 16.925688, column.surface_c());
  check_row(kelvin, "flux, 0.05 m, 1 h", 7.282012, column.at_c(0.05));
}

TEST_CASE("a film given as a cover is the film") {
  ConductionColumn column = deep_column(0.0);
  column.set_cover(1.0 / 15.0);
  column.settle_surface(Held{step_k});
  run(column, Held{step_k}, 1.0);
  check_row(fraction_of_step, "cover, surface, 1 h", 0.35774830, column.surface_c() / step_k);
}

namespace {

/// A wall of 0.1 m behind a film, its other face insulated, after so many steps of 50 s.
ConductionColumn plane_wall(double film_w_m2k, int steps) {
  ConductionColumn column(one_layer(0.1, material, 6), BottomKind::insulated, step_k,
                          [](std::size_t, double) { return step_k; });  // as in the solver
  const Film film{film_w_m2k, 0.0};
  column.settle_surface(film);
  take_steps(column, film, steps, 50.0);
  return column;
}

}  // namespace

TEST_CASE("a plane wall cools through one face, the other insulated") {
  // Bi = h L/k = 1, Fo = a t/L2 = 1: L 0.1 m, h 20 W/m2K, t 1e4 s; the step divides it.
  const ConductionColumn column = plane_wall(20.0, 200);
  check_row(fraction_of_step, "plane wall, insulated face", 0.53385940, column.at_c(0.1) / step_k);
  check_row(fraction_of_step, "plane wall, exposed face", 0.34817685, column.surface_c() / step_k);
}

TEST_CASE("a plane wall in a gale: Bi 10") {
  // Bi 10, Fo 0.2 and 1, by sixty terms of the series.
  const ConductionColumn early = plane_wall(200.0, 40);
  check_row(fraction_of_step, "plane wall, Bi 10, Fo 0.2, insulated face", 0.82925473,
            early.at_c(0.1) / step_k);
  check_row(fraction_of_step, "plane wall, Bi 10, Fo 0.2, exposed face", 0.12248224,
            early.surface_c() / step_k);
  const ConductionColumn late = plane_wall(200.0, 200);
  check_row(fraction_of_step, "plane wall, Bi 10, Fo 1, insulated face", 0.16381764,
            late.at_c(0.1) / step_k);
  check_row(fraction_of_step, "plane wall, Bi 10, Fo 1, exposed face", 0.02317206,
            late.surface_c() / step_k);
}

namespace {

struct DailyWave {
  double amplitude_k;
  const double* end_s;  // of the step
  SurfaceFlux operator()(double outer_c) const {
    constexpr double day_s = 86400.0;
    return Held{amplitude_k * std::sin(2.0 * std::numbers::pi * *end_s / day_s)}(outer_c);
  }
};

}  // namespace

TEST_CASE("a daily wave comes 0.1 m down weaker and later") {
  constexpr double days = 12.0;  // until the initial state no longer matters
  constexpr double day_s = 86400.0;
  ConductionColumn column = deep_column(0.0);
  double time_s = 0.0;
  const DailyWave wave{.amplitude_k = 15.0, .end_s = &time_s};  // 30 K from low to high
  double highest_c = -100.0;
  double lowest_c = 100.0;
  double highest_at_s = 0.0;
  while (time_s < days * day_s) {
    time_s += step_s;
    column.step(wave);
    if (time_s <= (days - 1.0) * day_s) continue;
    const double c = column.at_c(0.1);
    if (c > highest_c) highest_at_s = time_s;
    highest_c = std::max(highest_c, c);
    lowest_c = std::min(lowest_c, c);
  }
  check_row(fraction_of_step, "daily wave, 0.1 m, amplitude", 0.547167,
            (highest_c - lowest_c) / (2.0 * wave.amplitude_k));
  const double lag_h = (highest_at_s - (days - 1.0) * day_s) / 3600.0 - 6.0;
  check_row({.what = "conduction, lag of a daily wave",
             .source = "Carslaw & Jaeger 1959",
             .status = "published",
             .tolerance = step_s / 3600.0,
             .unit = "h",
             .because = "the peak is found to a step of time"},
            "daily wave, 0.1 m, lag", 2.30329, lag_h);
}

}  // namespace published_conduction_exact
