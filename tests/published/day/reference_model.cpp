#include "published/day/reference_model.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <stdexcept>

#include <cvode/cvode.h>
#include <nvector/nvector_serial.h>
#include <sundials/sundials_context.h>
#include <sunlinsol/sunlinsol_dense.h>
#include <sunmatrix/sunmatrix_dense.h>

namespace slabtide::test {

namespace {

constexpr double gas_j_mol_k = 8.314;
constexpr double sigma = 5.670374419e-8;
constexpr double emissivity = 0.93;
constexpr double zero_c_k = 273.15;
constexpr int slab_cells = 80;
constexpr int base_cells = 30;
constexpr int soil_cells = 40;

double arrhenius(double c, double reference_k, double energy) {
  return std::exp(energy / gas_j_mol_k * (1.0 / reference_k - 1.0 / (c + zero_c_k)));
}

/// Hyland & Wexler over water, Pa.
double saturation_pa(double c) {
  const double k = c + zero_c_k;
  return std::exp(-5800.2206 / k + 1.3914993 - 0.048640239 * k + 4.1764768e-5 * k * k -
                  1.4452093e-8 * k * k * k + 6.5459673 * std::log(k));
}

double at_grid(const std::vector<double>& values, const TimeGrid& grid, double time_s) {
  const double steps = std::clamp(time_s / grid.step_s, 0.0, static_cast<double>(grid.count - 1));
  const auto i = std::min(static_cast<std::size_t>(steps), grid.count - 2);
  return values[i] + (steps - static_cast<double>(i)) * (values[i + 1] - values[i]);
}

/// Cells that grow downwards in the slab and in the soil, even ones in the course between.
struct Cells {
  std::vector<double> width_m;
  std::vector<double> middle_m;
  std::vector<double> heat_j_m2k;
  std::vector<double> conductivity;
  std::size_t slab = slab_cells;

  void add(int count, double depth_m, const ThermalMaterial& material, double growth) {
    double weights = 0.0;
    for (int i = 0; i < count; ++i) weights += std::pow(growth, i);
    for (int i = 0; i < count; ++i) {
      const double width = depth_m * std::pow(growth, i) / weights;
      const double top = middle_m.empty() ? 0.0 : middle_m.back() + 0.5 * width_m.back();
      width_m.push_back(width);
      middle_m.push_back(top + 0.5 * width);
      heat_j_m2k.push_back(width * material.heat_capacity_j_m3k);
      conductivity.push_back(material.conductivity_w_mk);
    }
  }

  std::size_t count() const { return width_m.size(); }
  double half_resistance(std::size_t i) const { return 0.5 * width_m[i] / conductivity[i]; }
};

/// The ground is held at 0.6 m under the slab, or 0.3 m under the course where that is deeper.
Cells cells_of(const ColumnCase& column) {
  constexpr ThermalMaterial soil{.conductivity_w_mk = 1.2, .heat_capacity_j_m3k = 2.2e6};
  Cells cells;
  cells.add(slab_cells, column.thickness_m, column.mix->concrete, 1.027);  // finest on top
  double base_m = 0.0;
  for (const Layer& layer : column.below) {
    cells.add(base_cells, layer.thickness_m, layer.material, 1.0);
    base_m += layer.thickness_m;
  }
  cells.add(soil_cells, std::max(0.6, base_m + 0.3) - base_m, soil, 1.045);
  return cells;
}

struct Exchange {
  double surface_c;
  double into_w_m2;
  double evaporation_kg_m2_h;
};

/// State: cells, hydration age of each slab cell, set age at 20 mm and mid-depth, hours settled,
/// water on top less what the slab has lost.
class Model {
 public:
  Model(const ColumnCase& the_column, const SiteWeather& the_weather)
      : column(the_column),
        weather(the_weather),
        mix(*the_column.mix),
        cells(cells_of(the_column)) {
    const double transit_h = (column.placed_s - column.batched_s) / 3600.0;
    placed_age_h = transit_h * set_rate(column.concrete_c);
    ages_at = cells.count();
    sets_at = ages_at + cells.slab;
    settled_at = sets_at + 2;
    stock_at = settled_at + 1;
  }

  std::size_t size() const { return stock_at + 1; }

  double set_rate(double c) const {
    return arrhenius(c, 295.93, mix.setting.activation_energy_j_mol);
  }

  /// Share of the free-water rate.
  double wet(double stock) const { return 1.0 / (1.0 + std::max(0.0, -stock - 1.0) / 0.3); }

  Exchange exchange(double time_s, const double* y) const {
    double cover = 0.0;
    bool open = true;
    for (const CoverSpan& span : column.covers) {
      if (time_s < span.from_s || time_s >= span.to_s) continue;
      cover += span.resistance_m2k_w;
      open = open && !span.stops_evaporation;
    }
    const bool cured = column.curing_cover_from_set_age_h >= 0.0 &&
                       y[sets_at + 1] >= column.curing_cover_from_set_age_h;
    if (cured) {
      cover += column.curing_cover_m2k_w;
      open = false;
    }
    return solve(time_s, y, cover, open);
  }

  double bleeding_kg_m2_h(const double* y) const {
    const double initial_h = mix.setting.initial_set_h + mix.setting.shift_h;
    const double over_h = 0.75 * initial_h;
    const double c = middle_c(y);
    const double unset = (over_h - y[sets_at + 1]) / std::max(over_h - placed_age_h, 1e-9);
    const double settling_h = 18.0 * column.thickness_m;
    const double unsettled = 1.0 - y[settled_at] / settling_h;
    const double left = std::min(unset, unsettled);
    if (left <= 0.0 || left > 1.0) return 0.0;
    const double falls =
        unset < unsettled ? set_rate(c) / (over_h - placed_age_h) : settling_rate(c) / settling_h;
    return 2.0 * left * falls * column.bleed_up_fraction * mix.bleed_kg_m2_per_mm * 1000.0 *
           column.thickness_m;
  }

  static double settling_rate(double c) { return arrhenius(c, 293.15, 17500.0); }

  /// Degree of hydration for each hour of its age.
  double degree_rate(double age) const {
    const double a = age - mix.hydration.shift_h;
    if (a <= 0.0) return 0.0;
    const HydrationParameters& h = mix.hydration;
    const double held = h.held_back * std::pow(h.set_age_h, 4);
    const double power = std::pow(h.tau_h / a, h.beta);
    const double fourth = std::pow(a, 4);
    const double degree = h.alpha_u * std::exp(-power) * fourth / (fourth + held);
    return degree * (h.beta * power / a + 4.0 * held / (a * (fourth + held)));
  }

  /// Straight between the middles of cells, and from the surface to the first.
  double slab_c(const double* y, double surface_c, double depth_m) const {
    if (depth_m < cells.middle_m[0])
      return surface_c + depth_m / cells.middle_m[0] * (y[0] - surface_c);
    std::size_t i = 0;
    while (cells.middle_m[i + 1] < depth_m) ++i;
    const double way = (depth_m - cells.middle_m[i]) / (cells.middle_m[i + 1] - cells.middle_m[i]);
    return y[i] + way * (y[i + 1] - y[i]);
  }

  double middle_c(const double* y) const { return slab_c(y, y[0], 0.5 * column.thickness_m); }

  void rates(double time_s, const double* y, double* dy) const {
    const Exchange top = exchange(time_s, y);
    conduct(top, y, dy);
    const double released =
        mix.hydration.ultimate_heat_j_g * 1000.0 * mix.hydration.cementitious_kg_m3;
    for (std::size_t i = 0; i < cells.slab; ++i) {
      const double per_s = arrhenius(y[i], 294.25, mix.hydration.activation_energy_j_mol) / 3600.0;
      dy[ages_at + i] = per_s;
      dy[i] +=
          released * degree_rate(y[ages_at + i]) * per_s * cells.width_m[i] / cells.heat_j_m2k[i];
    }
    const double work_m = std::min(0.020, 0.5 * column.thickness_m);
    dy[sets_at] = set_rate(slab_c(y, top.surface_c, work_m)) / 3600.0;
    dy[sets_at + 1] = set_rate(middle_c(y)) / 3600.0;
    dy[settled_at] = settling_rate(middle_c(y)) / 3600.0;
    dy[stock_at] = (bleeding_kg_m2_h(y) - top.evaporation_kg_m2_h) / 3600.0;
  }

  const ColumnCase& column;
  const SiteWeather& weather;
  const MixModel& mix;
  Cells cells;
  double placed_age_h = 0.0;
  std::size_t ages_at = 0;
  std::size_t sets_at = 0;
  std::size_t settled_at = 0;
  std::size_t stock_at = 0;

 private:
  /// What the air's side takes in at an outer temperature, W/m2, and evaporates.
  double taken_in(double time_s, double outer_c, double share, double absorptance,
                  double& evaporation) const {
    const TimeGrid& grid = weather.grid;
    const auto now = [&](const std::vector<double>& v) { return at_grid(v, grid, time_s); };
    const double air_c = now(weather.air_c);
    const double wind = now(weather.wind_slab_m_s);
    const double view = column.exposure->sky_view;
    const double air4 = std::pow(air_c + zero_c_k, 4);
    const double longwave = emissivity * sigma *
                            (air4 * (view * now(weather.sky_emissivity) + 1.0 - view) -
                             std::pow(outer_c + zero_c_k, 4));
    const double warmer = outer_c - air_c;
    const double natural =
        (warmer > 0.0 ? 9.482 / 6.283 : 1.810 / 2.382) * std::cbrt(std::abs(warmer));
    const double forced = 3.26 * std::pow(wind, 0.89);
    const double h = natural + 1.52 * (std::sqrt(natural * natural + forced * forced) - natural);
    const double drive_pa = saturation_pa(outer_c) - now(weather.vapour_pressure_pa);
    constexpr double kg_m2_per_lb_ft2 = 4.882427636;
    evaporation = share * kg_m2_per_lb_ft2 * 0.44 * std::max(0.0, drive_pa) / 6894.757293 *
                  (0.253 + 0.096 * wind / 0.44704);
    const double latent_w_m2 = evaporation * (2500.8 - 2.36 * outer_c) * 1000.0 / 3600.0;
    return absorptance * now(column.exposure->shortwave_w_m2) + longwave - h * warmer - latent_w_m2;
  }

  /// Dry concrete throws back 1.82 times what it does wet, at most 0.77.
  double absorptance(double share) const {
    if (column.steady_wetness >= 0.0) return column.absorptance;
    const double back = 1.0 - column.absorptance;
    const double dry_back = std::max(back, std::min(0.77, back * 0.51 / 0.28));
    const double dark = std::clamp((share - 0.1) / 0.9, 0.0, 1.0);
    return 1.0 - dry_back + dark * (dry_back - back);
  }

  /// By halving the outer temperature.
  Exchange solve(double time_s, const double* y, double cover, bool open) const {
    const double bare = wet(y[stock_at]);
    double share = column.steady_wetness >= 0.0 ? column.steady_wetness : bare;
    const bool film = column.curing_compound_from_set_age_h >= 0.0 &&
                      y[sets_at] >= column.curing_compound_from_set_age_h;
    if (film) share = std::min(share, 0.05);
    if (!open) share = 0.0;
    const double inner = cells.half_resistance(0);
    double low = -60.0;
    double high = 120.0;
    double evaporation = 0.0;
    for (int i = 0; i < 50; ++i) {
      const double c = 0.5 * (low + high);
      const double in = taken_in(time_s, c, share, absorptance(bare), evaporation);
      (in > (c - y[0]) / (cover + inner) ? low : high) = c;
    }
    const double w_m2 = (0.5 * (low + high) - y[0]) / (cover + inner);
    return {y[0] + inner * w_m2, w_m2, evaporation};
  }

  void conduct(const Exchange& top, const double* y, double* dy) const {
    double in_w_m2 = top.into_w_m2;
    for (std::size_t i = 0; i < cells.count(); ++i) {
      const bool last = i + 1 == cells.count();
      const double below_c = last ? column.ground_c : y[i + 1];
      const double resistance =
          cells.half_resistance(i) + (last ? 0.0 : cells.half_resistance(i + 1));
      const double out_w_m2 = (y[i] - below_c) / resistance;
      dy[i] = (in_w_m2 - out_w_m2) / cells.heat_j_m2k[i];
      in_w_m2 = out_w_m2;
    }
  }
};

int rates(realtype time_s, N_Vector y, N_Vector dydt, void* data) {
  static_cast<const Model*>(data)->rates(time_s, N_VGetArrayPointer(y), N_VGetArrayPointer(dydt));
  return 0;
}

void start(const Model& model, const Profile& below, double* y) {
  const ColumnCase& column = model.column;
  const double transit_h = (column.placed_s - column.batched_s) / 3600.0;
  for (std::size_t i = 0; i < model.cells.count(); ++i) {
    y[i] = i < model.cells.slab ? column.concrete_c
                                : below(model.cells.middle_m[i] - column.thickness_m);
  }
  const double rate =
      arrhenius(column.concrete_c, 294.25, model.mix.hydration.activation_energy_j_mol);
  for (std::size_t i = model.ages_at; i < model.sets_at; ++i) y[i] = transit_h * rate;
  y[model.sets_at] = y[model.sets_at + 1] = model.placed_age_h;
  y[model.settled_at] = y[model.stock_at] = 0.0;
}

double resistance(const Model& model, double age_h) {
  const SettingParameters& s = model.mix.setting;
  const double risen = (age_h - s.shift_h) / s.initial_set_h;
  if (risen <= 0.0) return 0.0;
  return 500.0 * std::pow(risen, std::log(8.0) / std::log(s.final_set_h / s.initial_set_h));
}

double strength(const Model& model, double age_h) {
  const StrengthParameters& s = model.mix.strength;
  const double grown = s.rate_per_day * std::max(0.0, age_h - s.start_set_age_h) / 24.0;
  return s.ultimate_psi * grown / (1.0 + grown);
}

void record(const Model& model, double time_s, const double* y, ReferenceHistory& h) {
  const Cells& cells = model.cells;
  const double depth = model.column.thickness_m;
  double mean = 0.0;
  double moment = 0.0;
  for (std::size_t i = 0; i < cells.slab; ++i) {
    mean += y[i] * cells.width_m[i] / depth;
    moment += y[i] * cells.width_m[i] * (0.5 * depth - cells.middle_m[i]);
  }
  const Exchange top = model.exchange(time_s, y);
  h.time_s.push_back(time_s);
  h.surface_c.push_back(top.surface_c);
  h.mean_c.push_back(mean);
  h.gradient_c.push_back(12.0 * moment / (depth * depth));
  h.resistance_work_psi.push_back(resistance(model, y[model.sets_at]));
  h.resistance_middle_psi.push_back(resistance(model, y[model.sets_at + 1]));
  h.strength_psi.push_back(strength(model, y[model.sets_at]));
  h.set_age_middle_h.push_back(y[model.sets_at + 1]);
  h.bleed_water_kg_m2.push_back(std::max(0.0, y[model.stock_at]));
  h.evaporation_kg_m2_h.push_back(top.evaporation_kg_m2_h);
  h.cells_c.emplace_back(y, y + cells.count());
}

void require(int flag, const char* what) {
  if (flag < 0) throw std::runtime_error(what);
}

/// What is left, `hours` later, of a stress that comes on concrete of this modulus at `age_h`:
/// parts that fade in 8 h and in half an hour, of what is lost by creep in an hour and in a day.
double stress_left(double modulus_psi, double age_h, double set_h, double hours) {
  const double since_h = age_h - set_h;
  if (since_h <= 0.0) return std::exp(-hours / 0.5);
  const double creep = modulus_psi * 6894.757293e-6 * 128.9e-6 * 0.205 *
                       std::pow(age_h / 24.0, -0.4) * age_h / since_h;
  const double day = 0.8 * creep / (1.0 + 0.8 * creep);
  const double hour = 0.8 * 0.33 * creep / (1.0 + 0.8 * 0.33 * creep);
  const double slow_1 = 1.0 - std::exp(-1.0 / 8.0);
  const double slow_24 = 1.0 - std::exp(-3.0);
  const double fast_1 = 1.0 - std::exp(-2.0);
  const double slow = std::max(0.0, (fast_1 * day - hour) / (fast_1 * slow_24 - slow_1));
  const double fast = day - slow_24 * slow;
  return 1.0 - slow - fast + slow * std::exp(-hours / 8.0) + fast * std::exp(-hours / 0.5);
}

double tied_piece_curl(double modulus_psi, double length_m, double thickness_m) {
  constexpr double pa_per_psi = 6894.757293;
  const double radius = std::pow(
      modulus_psi * pa_per_psi * std::pow(thickness_m, 3) / (12.0 * (1.0 - 0.15 * 0.15) * 40.7e6),
      0.25);
  const double x = length_m / (radius * std::sqrt(8.0));
  if (x > 20.0) return 1.0;
  return 1.0 - 2.0 * std::cos(x) * std::cosh(x) * (std::tan(x) + std::tanh(x)) /
                   (std::sin(2.0 * x) + std::sinh(2.0 * x));
}

}  // namespace

ReferenceHistory reference_column(const ColumnCase& column, const SiteWeather& weather,
                                  const Profile& below, double end_s) {
  Model model(column, weather);
  SUNContext context = nullptr;
  require(SUNContext_Create(nullptr, &context), "context");
  const auto n = static_cast<sunindextype>(model.size());
  N_Vector y = N_VNew_Serial(n, context);
  start(model, below, N_VGetArrayPointer(y));
  void* cvode = CVodeCreate(CV_BDF, context);
  SUNMatrix matrix = SUNDenseMatrix(n, n, context);
  SUNLinearSolver solver = SUNLinSol_Dense(y, matrix, context);
  require(CVodeInit(cvode, rates, column.placed_s, y), "start");
  require(CVodeSStolerances(cvode, 1.0e-6, 1.0e-6), "tolerances");
  require(CVodeSetUserData(cvode, &model), "data");
  require(CVodeSetLinearSolver(cvode, solver, matrix), "solver");
  require(CVodeSetMaxNumSteps(cvode, 1000000), "steps");
  require(CVodeSetMaxStep(cvode, 120.0), "longest step");
  ReferenceHistory history;
  history.depth_m = model.cells.middle_m;
  record(model, column.placed_s, N_VGetArrayPointer(y), history);
  double time_s = column.placed_s;
  for (double to_s = time_s + 60.0; to_s <= end_s; to_s += 60.0) {
    require(CVode(cvode, to_s, y, &time_s, CV_NORMAL), "integrate");
    record(model, to_s, N_VGetArrayPointer(y), history);
  }
  CVodeFree(&cvode);
  SUNLinSolFree(solver);
  SUNMatDestroy(matrix);
  N_VDestroy(y);
  SUNContext_Free(&context);
  return history;
}

std::vector<double> reference_tied_ratio(const ReferenceHistory& history, const MixModel& mix,
                                         double length_m, double thickness_m) {
  const auto& psi = history.resistance_middle_psi;
  const auto set = static_cast<std::size_t>(
      std::find_if(psi.begin(), psi.end(), [](double p) { return p >= 4000.0; }) - psi.begin());
  const auto modulus = [&](std::size_t i) { return 57000.0 * std::sqrt(history.strength_psi[i]); };
  const std::vector<double>& age_h = history.set_age_middle_h;
  const double set_h = mix.setting.final_set_h + mix.setting.shift_h;
  std::vector<double> ratio(psi.size(), 0.0);
  for (std::size_t i = set + 1; i < psi.size(); ++i) {
    double mean = 0.0;
    double curl = 0.0;
    for (std::size_t j = set + 1; j <= i; ++j) {
      const double hours = (history.time_s[i] - history.time_s[j]) / 3600.0;
      const double through = 0.5 * (modulus(j - 1) + modulus(j));
      const double e = through * mix.expansion_per_k *
                       stress_left(through, 0.5 * (age_h[j - 1] + age_h[j]), set_h, hours);
      mean += 0.8 * e * (history.mean_c[j - 1] - history.mean_c[j]);
      curl += 0.5 * e * (history.gradient_c[j - 1] - history.gradient_c[j]);
    }
    curl *= tied_piece_curl(modulus(i), length_m, thickness_m);
    const double tension = std::max({0.0, mean + curl, mean - curl});
    ratio[i] = tension / (0.584 * std::pow(history.strength_psi[i], 0.79));
  }
  return ratio;
}

}  // namespace slabtide::test
