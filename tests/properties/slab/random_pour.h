#pragma once

#include <array>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include <rapidcheck.h>

#include "slab/column/column_core.h"
#include "slab/mix/mix_model.h"
#include "slab/process/setting.h"
#include "support/column_in_doubles.h"
#include "unit/slab/slab_fixtures.h"

namespace slabtide::fixtures {

inline double uniform(double low, double high) {
  constexpr int steps = 1'000'000;
  return low + (high - low) * *rc::gen::inRange(0, steps + 1) / steps;
}

/// Everything that makes up a column, in values that can be changed one at a time.
struct PourSketch {
  Mix mix;
  std::vector<Admixture> admixtures;
  Day day;
  double noon_w_m2 = 0.0;  ///< amplitude of the sun's half wave; 0 in the shade
  double sky_view = 1.0;
  double concrete_c = 20.0;
  double ground_c = 15.0;
  double thickness_m = 0.1;
  double absorptance = 0.7;
  std::vector<CoverSpan> covers;
  double curing_compound_from_set_age_h = -1.0;
  bool formed_face = false;
};

/// Typical weather, mix and slab between 5 and 38 °C.
inline PourSketch random_pour() {
  PourSketch pour;
  pour.mix.w_cm = uniform(0.40, 0.55);
  pour.mix.ash_fraction = *rc::gen::inRange(0, 3) == 0 ? uniform(0.0, 0.3) : 0.0;
  pour.mix.slag_fraction = *rc::gen::inRange(0, 3) == 0 ? uniform(0.0, 0.5) : 0.0;
  pour.day.high_c = uniform(12.0, 38.0);
  pour.day.low_c = pour.day.high_c - uniform(2.0, 16.0);
  pour.day.dew_point_c = pour.day.low_c - uniform(0.0, 8.0);
  pour.day.wind_slab_m_s = uniform(0.0, 6.0);
  pour.day.sky_emissivity = uniform(0.7, 1.0);
  pour.day.hours = 36.0;
  pour.noon_w_m2 = *rc::gen::inRange(0, 3) == 0 ? 0.0 : uniform(100.0, 1000.0);
  pour.sky_view = uniform(0.3, 1.0);
  pour.concrete_c = uniform(10.0, 35.0);
  pour.ground_c = uniform(5.0, 28.0);
  pour.thickness_m = uniform(0.075, 0.25);
  return pour;
}

/// A pour's column, solved by `solve_case(column, weather)`.
template <class SolveCase>
ColumnSolution solve_by(const SolveCase& solve_case, const PourSketch& pour) {
  const SiteWeather weather = day_weather(pour.day);
  CellExposure exposure = in_the_sun(weather, pour.day.start_hour, pour.noon_w_m2);
  exposure.sky_view = pour.sky_view;
  const MixModel mix = mix_model(pour.mix, pour.admixtures);
  ColumnCase column = slab_on_gravel(mix, exposure, pour.concrete_c, pour.thickness_m);
  column.ground_c = pour.ground_c;
  column.absorptance = pour.absorptance;
  column.covers = pour.covers;
  column.curing_compound_from_set_age_h = pour.curing_compound_from_set_age_h;
  column.formed_face = pour.formed_face;
  return solve_case(column, weather);
}

inline ColumnSolution solve(const PourSketch& pour, const SolverSettings& settings = {}) {
  const auto by_core = [&settings](const ColumnCase& column, const SiteWeather& weather) {
    const std::array cases{&column};
    ColumnSolution solution;
    ColumnWorkspace workspace;
    solve_side_by_side(ColumnBatch(weather, settings, cases), cases, std::span(&solution, 1),
                       workspace);
    return solution;
  };
  return solve_by(by_core, pour);
}

/// The same steps in double precision.
inline ColumnSolution solve_exactly(const PourSketch& pour, const SolverSettings& settings = {}) {
  const auto in_doubles = [&settings](const ColumnCase& column, const SiteWeather& weather) {
    return test::solve_in_doubles(column, weather, settings);
  };
  return solve_by(in_doubles, pour);
}

/// Print at the working depth, then initial and final set at mid-depth; in seconds, empty if not
/// reached.
using Events = std::array<std::optional<double>, 3>;
inline Events events_of(const ColumnHistory& h) {
  return {first_reached(h.time_s, h.resistance_work_psi, 40.0),
          first_reached(h.time_s, h.resistance_middle_psi, initial_set_psi),
          first_reached(h.time_s, h.resistance_middle_psi, final_set_psi)};
}

/// And the print at 5 mm, which follows the weather most closely; then strength to walk and to saw.
inline constexpr std::size_t plastic_events = 4;
inline std::array<std::optional<double>, 6> all_events_of(const ColumnHistory& h) {
  const Events set = events_of(h);
  return {set[0],
          set[1],
          set[2],
          first_reached(h.time_s, h.resistance_top_psi, 40.0),
          first_reached(h.time_s, h.strength_psi, 500.0),
          first_reached(h.time_s, h.strength_psi, 1500.0)};
}

}  // namespace slabtide::fixtures
