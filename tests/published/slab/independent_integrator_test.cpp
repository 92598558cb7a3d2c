#include <array>
#include <string>

#include <doctest/doctest.h>

#include "published/published_row.h"
#include "slab/column/column_solver.h"
#include "slab/mix/mix_model.h"
#include "slab/process/setting.h"
#include "support/cvode_column.h"
#include "unit/slab/slab_fixtures.h"

using namespace slabtide;
using namespace slabtide::fixtures;
using namespace slabtide::test;

namespace published_independent_integrator {

// The same points in depth, surface laws, heat of hydration and set ages solved by SUNDIALS' CVODE
// (variable-order BDF, its own Newton and error control at 1e-8). This compares the project's time
// stepping, its surface balance and its way of releasing heat. The points themselves are compared
// with closed forms (conduction_exact_test.cpp) and with finite volumes (reference_days_test.cpp).

namespace {

/// At 1e-10 its set times change by less than 0.001 s.
constexpr double cvode_error_s = 0.01;

void compare(const std::string& name, const ColumnCase& column, const SiteWeather& weather) {
  const SetTimes cvode_s = cvode_set_times(
      column, weather, {},
      {.relative = 1.0e-8, .absolute = 1.0e-8, .longest_step_s = weather.grid.step_s});
  const ColumnHistory h = solve_columns(std::array{column}, weather, {})[0];
  constexpr Published cvode{.what = "set times by another integrator",
                            .source = "SUNDIALS CVODE 6.4 on the same points, 1e-8",
                            .status = "independent program",
                            .tolerance = cvode_error_s,
                            .unit = "s",
                            .because = "its own error, by finer steps"};
  const auto check_event = [&](const char* event, double seen_s, double independent_s) {
    check_worst(cvode, name + event, "its own run", seen_s - independent_s);
  };
  check_event(", print", when_reached(h, h.resistance_work_psi, 40.0), cvode_s[0]);
  check_event(", initial set", when_reached(h, h.resistance_middle_psi, initial_set_psi),
              cvode_s[1]);
  check_event(", final set", when_reached(h, h.resistance_middle_psi, final_set_psi), cvode_s[2]);
}

}  // namespace

TEST_CASE("set times beside those of an independent integrator") {
  const MixModel mix = mix_model(Mix{}, {});
  const Day hot{.high_c = 34.0, .low_c = 22.0, .dew_point_c = 15.0, .wind_slab_m_s = 3.0};
  const SiteWeather hot_weather = day_weather(hot);
  const CellExposure sun = in_the_sun(hot_weather, hot.start_hour, 950.0);
  compare("hot sun", slab_on_gravel(mix, sun, 30.0), hot_weather);
  const Day cool{.high_c = 14.0, .low_c = 4.0, .dew_point_c = 2.0, .wind_slab_m_s = 1.0};
  const SiteWeather cool_weather = day_weather(cool);
  const CellExposure shade = in_the_shade(cool_weather, 0.5);
  compare("cool shade", slab_on_gravel(mix, shade, 15.0, 0.15), cool_weather);
}

}  // namespace published_independent_integrator
