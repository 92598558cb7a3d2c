#include "cvode_column.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <utility>
#include <vector>

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_band.h>
#include <sunmatrix/sunmatrix_band.h>

#include "slab/column/cell_weather.h"
#include "slab/column/column_mesh.h"
#include "slab/process/evaporation.h"
#include "slab/process/hydration.h"
#include "slab/process/setting.h"
#include "support/scalar_formulas.h"

namespace slabtide::bench {
namespace {

using namespace test;

constexpr double seconds_per_hour = 3600.0;
constexpr double mm_per_m = 1000.0;
constexpr double print_psi = 40.0;
constexpr std::size_t probe_count = 3;  // top, work, middle

/// Where each unknown stands in the state: the water that has evaporated, a cell's temperature,
/// then its equivalent age, then the set ages of the probes above the next cell, so that the matrix
/// stays narrow.
struct Order {
  std::vector<std::size_t> cell;
  std::vector<std::size_t> age;
  std::array<std::size_t, probe_count> probe{};
  std::size_t evaporated = 0;
  std::size_t size = 0;
};

struct Problem {
  const ColumnCase& column;
  const SiteWeather& weather;
  ColumnMesh mesh;
  std::array<ProbePlace, probe_count> places;
  Order order;
  double print_age_h = 0.0;
  double surface_c = 0.0;  // result of the last balance

  Problem(const ColumnCase& c, const SiteWeather& w, const SolverSettings& cells)
      : column(c), weather(w), mesh(column_mesh(c, cells)), surface_c(c.concrete_c) {
    const ProbeDepths depths = probe_depths(c.thickness_m);
    places = {probe_place(mesh.grid, depths.top_m), probe_place(mesh.grid, depths.work_m),
              probe_place(mesh.grid, depths.middle_m)};
    print_age_h = set_age_at_resistance_h(print_psi, c.mix->setting);
    order.evaporated = order.size++;
    for (std::size_t i = 0; i < mesh.grid.cells(); ++i) {
      for (std::size_t k = 0; k < probe_count; ++k) {
        if (places[k].above == i) order.probe[k] = order.size++;
      }
      order.cell.push_back(order.size++);
      if (i < mesh.slab_cells) order.age.push_back(order.size++);
    }
  }

  /// All of it has come where the slab dries.
  double all_bleed_kg_m2() const {
    return column.bleed_up_fraction * column.mix->bleed_kg_m2_per_mm * mm_per_m *
           column.thickness_m;
  }

  /// How far from the diagonal an unknown depends on another.
  std::size_t band() const {
    std::size_t widest = 1;
    const auto couple = [&widest](std::size_t a, std::size_t b) {
      widest = std::max(widest, a > b ? a - b : b - a);
    };
    for (std::size_t i = 1; i < order.cell.size(); ++i) couple(order.cell[i], order.cell[i - 1]);
    couple(order.evaporated, order.cell[0]);  // what still evaporates goes by what has
    for (std::size_t k = 0; k < probe_count; ++k) {
      const std::size_t below = places[k].above;
      couple(order.probe[k], order.cell[below]);
      couple(order.probe[k], order.cell[below == 0 ? 0 : below - 1]);
      if (below == 0) couple(order.probe[k], order.probe[0]);
    }
    return widest;
  }
};

/// Newton's method: the balance of the surface against the first cell.
double balance(Problem& p, const SurfaceConditions& conditions, double first_cell_c) {
  constexpr int max_rounds = 20;
  constexpr double close_enough_k = 1.0e-6;
  const double conductance = p.mesh.grid.conductance_w_m2k[0];
  for (int round = 0; round < max_rounds; ++round) {
    const SurfaceExchange exchange = surface_exchange(conditions, p.surface_c);
    const double gain = exchange.w_m2 + conductance * (first_cell_c - p.surface_c);
    const double change = gain / (conductance - exchange.slope_w_m2k);
    p.surface_c += change;
    if (std::abs(change) < close_enough_k) break;
  }
  return p.surface_c;
}

void conduct(const Problem& p, double surface_c, const double* state, double* rate) {
  const ConductionGrid& g = p.mesh.grid;
  const std::vector<std::size_t>& at = p.order.cell;
  for (std::size_t i = 0; i < at.size(); ++i) {
    const double c = state[at[i]];
    const double above_c = i == 0 ? surface_c : state[at[i - 1]];
    double w_m2 = g.conductance_w_m2k[i] * (above_c - c);
    if (i + 1 < at.size()) {
      w_m2 += g.conductance_w_m2k[i + 1] * (state[at[i + 1]] - c);
    } else if (p.mesh.bottom.kind == BottomKind::fixed_temperature) {
      w_m2 += g.conductance_w_m2k[i + 1] * (p.mesh.bottom.fixed_c - c);
    }
    rate[at[i]] = w_m2 / g.capacity_j_m2k[i];
  }
}

int rates(realtype time_s, N_Vector y, N_Vector dydt, void* data) {
  auto& p = *static_cast<Problem*>(data);
  const double* state = N_VGetArrayPointer(y);
  double* rate = N_VGetArrayPointer(dydt);
  const MixModel& mix = *p.column.mix;
  const ConductionGrid& g = p.mesh.grid;
  const double wetness = surface_wetness(state[p.order.evaporated] - p.all_bleed_kg_m2(), false);
  const SurfaceConditions now = conditions_at(p.column, p.weather, time_s, wetness);
  const double surface_c = balance(p, now, state[p.order.cell[0]]);
  conduct(p, surface_c, state, rate);
  rate[p.order.evaporated] =
      surface_exchange(now, surface_c).evaporation_kg_m2_h / seconds_per_hour;
  for (std::size_t i = 0; i < p.mesh.slab_cells; ++i) {
    const double c = state[p.order.cell[i]];
    rate[p.order.cell[i]] += heat_rate_w_m3(state[p.order.age[i]], c, mix.hydration) *
                             g.thickness_m[i] / g.capacity_j_m2k[i];
    rate[p.order.age[i]] =
        hydration_rate(c, mix.hydration.activation_energy_j_mol) / seconds_per_hour;
  }
  for (std::size_t k = 0; k < probe_count; ++k) {
    const std::size_t below = p.places[k].above;
    const double above_c = below == 0 ? surface_c : state[p.order.cell[below - 1]];
    const double c = above_c + p.places[k].fraction * (state[p.order.cell[below]] - above_c);
    rate[p.order.probe[k]] = set_rate(c, mix.setting.activation_energy_j_mol) / seconds_per_hour;
  }
  return 0;
}

int events(realtype, N_Vector y, realtype* g, void* data) {
  const auto& p = *static_cast<const Problem*>(data);
  const double* state = N_VGetArrayPointer(y);
  g[0] = state[p.order.probe[1]] - p.print_age_h;
  g[1] = state[p.order.probe[2]] - initial_set_age_h(p.column.mix->setting);
  g[2] = state[p.order.probe[2]] - final_set_age_h(p.column.mix->setting);
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
  state[p.order.evaporated] = 0.0;
  for (std::size_t i = 0; i < p.order.cell.size(); ++i) {
    state[p.order.cell[i]] = i < p.mesh.slab_cells ? concrete_c : p.column.ground_c;
  }
  for (const std::size_t at : p.order.age) {
    state[at] = transit_h * hydration_rate(concrete_c, mix.hydration.activation_energy_j_mol);
  }
  for (const std::size_t at : p.order.probe) {
    state[at] = transit_h * set_rate(concrete_c, mix.setting.activation_energy_j_mol);
  }
}

/// CVODE and its data, freed at the end.
class Integrator {
 public:
  Integrator(Problem& problem, const CvodeSettings& settings) : problem_(problem) {
    require(SUNContext_Create(nullptr, &context_), "context");
    const auto n = static_cast<sunindextype>(problem.order.size);
    const auto band = static_cast<sunindextype>(problem.band());
    state_ = N_VNew_Serial(n, context_);
    start_state(problem, state_);
    cvode_ = CVodeCreate(CV_BDF, context_);
    matrix_ = SUNBandMatrix(n, band, band, context_);
    solver_ = SUNLinSol_Band(state_, matrix_, context_);
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
                         const SolverSettings& cells, const CvodeSettings& settings) {
  Problem problem(column, weather, cells);
  return Integrator(problem, settings).to_the_end();
}

}  // namespace slabtide::bench
