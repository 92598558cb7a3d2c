#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <stdexcept>
#include <string>
#include <vector>

#include <cvode/cvode.h>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "published/published_row.h"
#include "slab/column/cell_weather.h"
#include "slab/column/column_modes.h"
#include "slab/column/column_solver.h"
#include "slab/mix/mix_model.h"
#include "slab/process/evaporation.h"
#include "slab/process/hydration.h"
#include "slab/process/setting.h"
#include "slabtide/core/units.h"
#include "support/scalar_formulas.h"
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

constexpr std::array<std::size_t, 3> followed{0, 1, 3};  // of the probes: top, work, middle

/// State: amplitudes, equivalent age of each point that releases heat, set age at the probes; the
/// water that has evaporated. Where the slab dries all bleed water has come.
struct SemiDiscrete {
  const ColumnCase& column;
  const SiteWeather& weather;
  ColumnModes modes;
  double print_age_h;

  SemiDiscrete(const ColumnCase& c, const SiteWeather& w)
      : column(c),
        weather(w),
        modes(c, SolverSettings{}),
        print_age_h(set_age_at_resistance_h(40.0, c.mix->setting)) {}

  std::size_t first_probe() const { return modes.count() + heat_points; }
  std::size_t evaporated() const { return first_probe() + followed.size(); }
  std::size_t size() const { return evaporated() + 1; }
  double temperature_c(const std::vector<double>& at, const double* state) const {
    return std::inner_product(at.begin(), at.end(), state, column.ground_c);
  }
  double all_bleed_kg_m2() const {
    return column.bleed_up_fraction * column.mix->bleed_kg_m2_per_mm * mm_per_m *
           column.thickness_m;
  }
};

int rates(realtype time_s, N_Vector y, N_Vector dydt, void* data) {
  const auto& p = *static_cast<const SemiDiscrete*>(data);
  const double* state = N_VGetArrayPointer(y);
  double* rate = N_VGetArrayPointer(dydt);
  const MixModel& mix = *p.column.mix;
  const std::size_t n = p.modes.count();
  const double wetness = surface_wetness(state[p.evaporated()] - p.all_bleed_kg_m2(), false);
  const SurfaceConditions now = conditions_at(p.column, p.weather, time_s, wetness);
  const auto exchange = surface_exchange(now, p.temperature_c(p.modes.at_surface, state));
  rate[p.evaporated()] = exchange.evaporation_kg_m2_h / seconds_per_hour;
  for (std::size_t m = 0; m < n; ++m) {
    rate[m] =
        p.modes.at_surface[m] * exchange.w_m2 - p.modes.conduction.decay_per_s()[m] * state[m];
  }
  for (std::size_t i = 0; i < heat_points; ++i) {
    const double c = p.temperature_c(p.modes.at_heat[i], state);
    const double w_m2 =
        heat_rate_w_m3(state[n + i], c, mix.hydration) * p.modes.heat_thickness_m[i];
    for (std::size_t m = 0; m < n; ++m) rate[m] += p.modes.from_heat[i][m] * w_m2;
    rate[n + i] = hydration_rate(c, mix.hydration.activation_energy_j_mol) / seconds_per_hour;
  }
  for (std::size_t i = 0; i < followed.size(); ++i) {
    const double c = p.temperature_c(p.modes.at_probe[followed[i]], state);
    rate[p.first_probe() + i] = set_rate(c, mix.setting.activation_energy_j_mol) / seconds_per_hour;
  }
  return 0;
}

/// Print at the working depth, initial and final set at mid-depth.
int events(realtype, N_Vector y, realtype* g, void* data) {
  const auto& p = *static_cast<const SemiDiscrete*>(data);
  const double* set_age_h = N_VGetArrayPointer(y) + p.first_probe();
  g[0] = set_age_h[1] - p.print_age_h;
  g[1] = set_age_h[2] - initial_set_age_h(p.column.mix->setting);
  g[2] = set_age_h[2] - final_set_age_h(p.column.mix->setting);
  return 0;
}

void require(int flag, const char* what) {
  if (flag < 0) throw std::runtime_error(what);
}

void start_state(const SemiDiscrete& p, N_Vector y) {
  double* state = N_VGetArrayPointer(y);
  const MixModel& mix = *p.column.mix;
  const double transit_h = (p.column.placed_s - p.column.batched_s) / seconds_per_hour;
  const double concrete_c = p.column.concrete_c;
  const std::vector<double> placed = placed_amplitudes(p.column, p.modes);
  std::copy(placed.begin(), placed.end(), state);
  for (std::size_t i = p.modes.count(); i < p.first_probe(); ++i)
    state[i] = transit_h * hydration_rate(concrete_c, mix.hydration.activation_energy_j_mol);
  state[p.evaporated()] = 0.0;
  for (std::size_t i = p.first_probe(); i < p.evaporated(); ++i)
    state[i] = transit_h * set_rate(concrete_c, mix.setting.activation_energy_j_mol);
}

/// Seconds from the grid's start to each event.
std::array<double, 3> integrate(SemiDiscrete& p) {
  SUNContext context = nullptr;
  require(SUNContext_Create(nullptr, &context), "context");
  const auto n = static_cast<sunindextype>(p.size());
  N_Vector y = N_VNew_Serial(n, context);
  start_state(p, y);
  void* cvode = CVodeCreate(CV_BDF, context);
  SUNMatrix matrix = SUNDenseMatrix(n, n, context);
  SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
  require(CVodeInit(cvode, rates, p.column.placed_s, y), "start");
  require(CVodeSStolerances(cvode, 1.0e-8, 1.0e-8), "tolerances");
  require(CVodeSetUserData(cvode, &p), "data");
  require(CVodeSetLinearSolver(cvode, solver, matrix), "solver");
  require(CVodeSetMaxNumSteps(cvode, 1000000), "steps");
  require(CVodeSetMaxStep(cvode, p.weather.grid.step_s), "longest step");
  require(CVodeRootInit(cvode, 3, events), "events");
  std::array<double, 3> at_s{};
  double time_s = p.column.placed_s;
  while (at_s[2] == 0.0 && time_s < p.weather.grid.end_s()) {
    const int flag = CVode(cvode, p.weather.grid.end_s(), y, &time_s, CV_NORMAL);
    require(flag, "integrate");
    std::array<int, 3> crossed{};
    if (flag != CV_ROOT_RETURN) break;
    require(CVodeGetRootInfo(cvode, crossed.data()), "events");
    for (std::size_t i = 0; i < crossed.size(); ++i)
      if (crossed[i] != 0) at_s[i] = time_s;
  }
  CVodeFree(&cvode);
  SUNLinSolFree(solver);
  SUNMatDestroy(matrix);
  N_VDestroy(y);
  SUNContext_Free(&context);
  return at_s;
}

/// At 1e-10 its set times change by less than 0.001 s.
constexpr double cvode_error_s = 0.01;

void compare(const std::string& name, const ColumnCase& column, const SiteWeather& weather) {
  SemiDiscrete problem(column, weather);
  const std::array<double, 3> cvode_s = integrate(problem);
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
