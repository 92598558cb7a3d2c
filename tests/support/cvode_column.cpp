#include "support/cvode_column.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <stdexcept>
#include <utility>
#include <vector>

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

#include "slab/column/cell_weather.h"
#include "slab/column/column_modes.h"
#include "slab/process/evaporation.h"
#include "slab/process/hydration.h"
#include "slab/process/setting.h"
#include "support/scalar_formulas.h"

namespace slabtide::test {
namespace {

constexpr double seconds_per_hour = 3600.0;
constexpr double mm_per_m = 1000.0;
constexpr double print_psi = 40.0;
constexpr std::array<std::size_t, 3> followed{0, 1, 3};  // of the probes: top, work, middle

/// State: the amplitudes of the modes, equivalent age of each point that releases heat, set ages,
/// the water that has evaporated.
struct Problem {
  const ColumnCase& column;
  const SiteWeather& weather;
  ColumnModes modes;
  double print_age_h = 0.0;

  Problem(const ColumnCase& c, const SiteWeather& w, const SolverSettings& points)
      : column(c), weather(w), modes(c, points) {
    print_age_h = set_age_at_resistance_h(print_psi, c.mix->setting);
  }

  std::size_t first_probe() const { return modes.count() + heat_points; }
  std::size_t evaporated() const { return first_probe() + followed.size(); }
  std::size_t size() const { return evaporated() + 1; }
  double temperature_c(const std::vector<double>& at, const double* state) const {
    return std::inner_product(at.begin(), at.end(), state, column.ground_c);
  }
  /// All of it has come where the slab dries.
  double all_bleed_kg_m2() const {
    return column.bleed_up_fraction * column.mix->bleed_kg_m2_per_mm * mm_per_m *
           column.thickness_m;
  }
};

int rates(realtype time_s, N_Vector y, N_Vector dydt, void* data) {
  const auto& p = *static_cast<const Problem*>(data);
  const double* state = N_VGetArrayPointer(y);
  double* rate = N_VGetArrayPointer(dydt);
  const MixModel& mix = *p.column.mix;
  const std::size_t n = p.modes.count();
  const double wetness = surface_wetness(state[p.evaporated()] - p.all_bleed_kg_m2(), false);
  const SurfaceConditions now = conditions_at(p.column, p.weather, time_s, wetness);
  const auto exchange = surface_exchange(now, p.temperature_c(p.modes.at_surface, state));
  rate[p.evaporated()] = exchange.evaporation_kg_m2_h / seconds_per_hour;
  const std::vector<double>& decay_per_s = p.modes.conduction.decay_per_s();
  for (std::size_t m = 0; m < n; ++m)
    rate[m] = p.modes.at_surface[m] * exchange.w_m2 - decay_per_s[m] * state[m];
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

int events(realtype, N_Vector y, realtype* g, void* data) {
  const auto& p = *static_cast<const Problem*>(data);
  const double* state = N_VGetArrayPointer(y);
  const double* set_age_h = state + p.first_probe();
  g[0] = set_age_h[1] - p.print_age_h;
  g[1] = set_age_h[2] - initial_set_age_h(p.column.mix->setting);
  g[2] = set_age_h[2] - final_set_age_h(p.column.mix->setting);
  return 0;
}

void require(int flag, const char* what) {
  if (flag < 0) throw std::runtime_error(what);
}

void start_state(const Problem& p, N_Vector y) {
  double* state = N_VGetArrayPointer(y);
  const MixModel& mix = *p.column.mix;
  const double transit_h = (p.column.placed_s - p.column.batched_s) / seconds_per_hour;
  const double concrete_c = p.column.concrete_c;
  const std::vector<double> placed = placed_amplitudes(p.column, p.modes);
  std::copy(placed.begin(), placed.end(), state);
  for (std::size_t i = p.modes.count(); i < p.first_probe(); ++i)
    state[i] = transit_h * hydration_rate(concrete_c, mix.hydration.activation_energy_j_mol);
  for (std::size_t i = p.first_probe(); i < p.evaporated(); ++i)
    state[i] = transit_h * set_rate(concrete_c, mix.setting.activation_energy_j_mol);
  state[p.evaporated()] = 0.0;
}

/// CVODE and its data, freed at the end.
class Integrator {
 public:
  Integrator(Problem& problem, const CvodeSettings& settings) : problem_(problem) {
    require(SUNContext_Create(nullptr, &context_), "context");
    const auto n = static_cast<sunindextype>(problem.size());
    state_ = N_VNew_Serial(n, context_);
    start_state(problem, state_);
    cvode_ = CVodeCreate(CV_BDF, context_);
    matrix_ = SUNDenseMatrix(n, n, context_);
    solver_ = SUNLinSol_Dense(state_, matrix_, context_);
    require(CVodeInit(cvode_, rates, problem.column.placed_s, state_), "start");
    require(CVodeSStolerances(cvode_, settings.relative, settings.absolute), "tolerances");
    require(CVodeSetUserData(cvode_, &problem_), "data");
    require(CVodeSetLinearSolver(cvode_, solver_, matrix_), "solver");
    require(CVodeSetMaxNumSteps(cvode_, 1000000), "steps");
    require(CVodeSetMaxStep(cvode_, settings.longest_step_s), "longest step");
    require(CVodeRootInit(cvode_, 3, events), "events");
  }
  ~Integrator() {
    CVodeFree(&cvode_);
    SUNLinSolFree(solver_);
    SUNMatDestroy(matrix_);
    N_VDestroy(state_);
    SUNContext_Free(&context_);
  }
  Integrator(const Integrator&) = delete;
  Integrator& operator=(const Integrator&) = delete;

  SetTimes to_the_end() {
    SetTimes at_s{};
    double time_s = problem_.column.placed_s;
    const double end_s = problem_.weather.grid.end_s();
    while (time_s < end_s) {
      const int flag = CVode(cvode_, end_s, state_, &time_s, CV_NORMAL);
      require(flag, "integrate");
      if (flag != CV_ROOT_RETURN) break;
      std::array<int, 3> crossed{};
      require(CVodeGetRootInfo(cvode_, crossed.data()), "events");
      for (std::size_t i = 0; i < crossed.size(); ++i) {
        if (crossed[i] != 0) at_s[i] = time_s;
      }
    }
    return at_s;
  }

 private:
  Problem& problem_;
  SUNContext context_ = nullptr;
  N_Vector state_ = nullptr;
  void* cvode_ = nullptr;
  SUNMatrix matrix_ = nullptr;
  SUNLinearSolver solver_ = nullptr;
};

}  // namespace

SetTimes cvode_set_times(const ColumnCase& column, const SiteWeather& weather,
                         const SolverSettings& points, const CvodeSettings& settings) {
  Problem problem(column, weather, points);
  return Integrator(problem, settings).to_the_end();
}

}  // namespace slabtide::test
