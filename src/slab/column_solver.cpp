#include "slabtide/slab/column_solver.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>

#include "slabtide/core/units.h"
#include "slabtide/slab/bleed.h"
#include "slabtide/slab/cell_weather.h"
#include "slabtide/slab/column_mesh.h"
#include "slabtide/slab/conduction.h"
#include "slabtide/slab/evaporation.h"
#include "slabtide/slab/hydration.h"
#include "slabtide/slab/setting.h"
#include "slabtide/slab/strength.h"

namespace slabtide {
namespace {

constexpr double record_every_s = 120.0;  // at most, while steps are shorter
constexpr double same_instant_s = 1.0e-6;

/// Set age at one depth, carried on by the trapezoidal rule.
struct SettingProbe {
  ProbePlace place;
  double rate = 0.0;  // hours an hour, now
  double age_h = 0.0;
};

struct Probes {
  SettingProbe top;
  SettingProbe work;
  SettingProbe deep;
  SettingProbe middle;

  std::array<SettingProbe*, 4> all() { return {&top, &work, &deep, &middle}; }
};

/// Hydration of one slab cell.
struct CellHeat {
  double age_h = 0.0;   // equivalent, at 21.1 °C
  double rate = 0.0;    // hours an hour, now
  double degree = 0.0;  // for which heat has been released
  double j_m2 = 0.0;    // released by one unit of degree
};

std::vector<double> start_temperatures(const ColumnMesh& mesh, const ColumnCase& column) {
  std::vector<double> start_c(mesh.grid.cells(), column.ground_c);
  std::fill_n(start_c.begin(), mesh.slab_cells, column.concrete_c);
  return start_c;
}

std::array<std::vector<double>*, 15> series_of(ColumnHistory& h) {
  return {&h.time_s,
          &h.surface_c,
          &h.middle_c,
          &h.mean_c,
          &h.gradient_c,
          &h.set_age_work_h,
          &h.set_age_middle_h,
          &h.resistance_top_psi,
          &h.resistance_work_psi,
          &h.resistance_deep_psi,
          &h.resistance_middle_psi,
          &h.strength_psi,
          &h.evaporation_kg_m2_h,
          &h.bleed_kg_m2_h,
          &h.film_kg_m2};
}

class ColumnRun {
 public:
  ColumnRun(const ColumnCase& column, const SiteWeather& weather, const SolverSettings& settings);

  ColumnSolution run();

 private:
  using Step = StepResult<SurfaceExchange>;

  void start_setting();
  void start_heat();
  void reserve_history();
  void settle_surface();

  double next_step_s() const;
  void advance(double step_s);
  double wetness(double ahead_s) const;
  double predict_heat(double step_s);
  void age(double step_s);
  void move_water(double step_s, const Step& step);

  void record();
  void record_profile();
  double gradient_c() const;
  double slab_mean_c() const;

  const ColumnCase& case_;
  const SiteWeather& weather_;
  const SolverSettings& settings_;
  const MixModel& mix_;
  double end_s_;
  std::size_t slab_cells_;
  ConductionColumn heat_;
  Probes probes_;
  std::vector<CellHeat> cells_;
  std::vector<double> source_j_m2_;
  double time_s_;
  double recorded_s_;
  double start_j_m2_ = 0.0;
  double total_bleed_kg_m2_ = 0.0;
  double bled_share_ = 0.0;
  double bleed_kg_m2_h_ = 0.0;
  double evaporation_kg_m2_h_ = 0.0;
  double film_kg_m2_ = 0.0;
  CoverState cover_;
  ColumnSolution solution_;

  ColumnRun(const ColumnCase& column, const SiteWeather& weather, const SolverSettings& settings,
            const ColumnMesh& mesh);
};

ColumnRun::ColumnRun(const ColumnCase& column, const SiteWeather& weather,
                     const SolverSettings& settings)
    : ColumnRun(column, weather, settings, column_mesh(column, settings)) {}

ColumnRun::ColumnRun(const ColumnCase& column, const SiteWeather& weather,
                     const SolverSettings& settings, const ColumnMesh& mesh)
    : case_(column),
      weather_(weather),
      settings_(settings),
      mix_(*column.mix),
      end_s_(settings.end_s > 0.0 ? settings.end_s : weather.grid.end_s()),
      slab_cells_(mesh.slab_cells),
      heat_(mesh.grid, mesh.bottom, start_temperatures(mesh, column)),
      time_s_(column.placed_s),
      recorded_s_(column.placed_s) {
  start_setting();
  start_heat();
  reserve_history();
  if (!column.formed_face)
    total_bleed_kg_m2_ = mix_.bleed_kg_m2_per_mm * column.thickness_m * mm_per_m;
}

/// Until it is placed the concrete ages in the truck at the temperature it arrives with.
void ColumnRun::start_setting() {
  const double transit_h = (case_.placed_s - case_.batched_s) / seconds_per_hour;
  const ProbeDepths depths = probe_depths(case_.thickness_m);
  const double rate = set_rate(case_.concrete_c, mix_.setting.activation_energy_j_mol);
  const std::array<double, 4> depth_m{depths.top_m, depths.work_m, depths.deep_m, depths.middle_m};
  const auto all = probes_.all();
  for (std::size_t i = 0; i < all.size(); ++i)
    *all[i] = {probe_place(heat_.grid(), depth_m[i]), rate, rate * transit_h};
  bled_share_ = bleed_share(rate * transit_h, mix_.setting);
}

/// Heat released before placing is in the concrete's temperature already.
void ColumnRun::start_heat() {
  const double transit_h = (case_.placed_s - case_.batched_s) / seconds_per_hour;
  const double rate = hydration_rate(case_.concrete_c, mix_.hydration.activation_energy_j_mol);
  const double degree = hydration_degree(rate * transit_h, mix_.hydration);
  const double j_m3 = heat_capacity_of_hydration_j_m3(mix_.hydration);
  for (std::size_t i = 0; i < slab_cells_; ++i)
    cells_.push_back({rate * transit_h, rate, degree, j_m3 * heat_.grid().thickness_m[i]});
  source_j_m2_.assign(slab_cells_, 0.0);
  start_j_m2_ = heat_.stored_j_m2();
}

/// Enough for the shortest steps throughout, so that the time loop never allocates.
void ColumnRun::reserve_history() {
  const double shortest_s =
      std::min(std::max(settings_.early_step_s, record_every_s), settings_.late_step_s);
  const auto most = static_cast<std::size_t>((end_s_ - time_s_) / shortest_s) + 4;
  for (std::vector<double>* each : series_of(solution_.history)) each->reserve(most);
}

void ColumnRun::settle_surface() {
  const SurfaceConditions now = conditions_at(case_, weather_, time_s_, wetness(0.0));
  const SurfaceExchange exchange =
      heat_.settle_surface([&](double outer_c, Stage) { return surface_exchange(now, outer_c); });
  evaporation_kg_m2_h_ = exchange.evaporation_kg_m2_h;
}

ColumnSolution ColumnRun::run() {
  cover_ = cover_at(case_, time_s_);
  heat_.set_cover(cover_.resistance_m2k_w);
  settle_surface();
  record();
  while (end_s_ - time_s_ > same_instant_s) {
    advance(next_step_s());
    const bool last = end_s_ - time_s_ <= same_instant_s;
    if (last || time_s_ - recorded_s_ >= record_every_s - same_instant_s) record();
  }
  for (std::vector<double>* each : series_of(solution_.history)) each->shrink_to_fit();
  solution_.energy.stored_j_m2 = heat_.stored_j_m2() - start_j_m2_;
  return std::move(solution_);
}

double ColumnRun::next_step_s() const {
  const bool set = probes_.middle.age_h >= final_set_age_h(mix_.setting);
  return std::min(set ? settings_.late_step_s : settings_.early_step_s, end_s_ - time_s_);
}

void ColumnRun::advance(double step_s) {
  cover_ = cover_at(case_, time_s_ + 0.5 * step_s);
  const double wet = wetness(0.5 * step_s);
  const std::array<SurfaceConditions, 2> conditions{
      conditions_at(case_, weather_, time_s_ + stage_share(Stage::first) * step_s, wet),
      conditions_at(case_, weather_, time_s_ + stage_share(Stage::second) * step_s, wet)};
  solution_.energy.source_j_m2 += predict_heat(step_s);
  heat_.set_step(step_s);
  heat_.set_cover(cover_.resistance_m2k_w);
  const Step step = heat_.step(
      [&](double outer_c, Stage stage) {
        return surface_exchange(conditions[static_cast<std::size_t>(stage)], outer_c);
      },
      source_j_m2_);
  solution_.energy.surface_j_m2 += step.surface_j_m2;
  solution_.energy.ground_j_m2 += step.bottom_j_m2;
  time_s_ += step_s;
  age(step_s);
  move_water(step_s, step);
}

/// Share of free-water evaporation `ahead_s` from now.
double ColumnRun::wetness(double ahead_s) const {
  if (cover_.stops_evaporation) return 0.0;
  const double ahead_h = ahead_s / seconds_per_hour;
  const bool film = case_.film_from_set_age_h >= 0.0 &&
                    probes_.work.age_h + ahead_h * probes_.work.rate >= case_.film_from_set_age_h;
  return surface_wetness(probes_.top.age_h + ahead_h * probes_.top.rate, mix_.setting, film);
}

/// The heat of the step to come: what the degree of hydration at its predicted end asks for,
/// less what has been released. Errors of prediction do not add up, since the next step
/// starts from the corrected age. J/m2 in all.
double ColumnRun::predict_heat(double step_s) {
  const double step_h = step_s / seconds_per_hour;
  double sum = 0.0;
  for (std::size_t i = 0; i < slab_cells_; ++i) {
    CellHeat& cell = cells_[i];
    const double degree = hydration_degree(cell.age_h + cell.rate * step_h, mix_.hydration);
    source_j_m2_[i] = cell.j_m2 * (degree - cell.degree);
    cell.degree = degree;
    sum += source_j_m2_[i];
  }
  return sum;
}

void ColumnRun::age(double step_s) {
  const double half_h = 0.5 * step_s / seconds_per_hour;
  for (std::size_t i = 0; i < slab_cells_; ++i) {
    CellHeat& cell = cells_[i];
    const double rate = hydration_rate(heat_.cells_c()[i], mix_.hydration.activation_energy_j_mol);
    cell.age_h += half_h * (cell.rate + rate);
    cell.rate = rate;
  }
  for (SettingProbe* probe : probes_.all()) {
    const double rate =
        set_rate(temperature_at(heat_, probe->place), mix_.setting.activation_energy_j_mol);
    probe->age_h += half_h * (probe->rate + rate);
    probe->rate = rate;
  }
}

void ColumnRun::move_water(double step_s, const Step& step) {
  const double step_h = step_s / seconds_per_hour;
  const double share = bleed_share(probes_.middle.age_h, mix_.setting);
  const double bled = total_bleed_kg_m2_ * (share - bled_share_);
  bled_share_ = share;
  evaporation_kg_m2_h_ = step.stages[1].evaporation_kg_m2_h;
  const double mean_evaporation = (1.0 - stage_gamma) * step.stages[0].evaporation_kg_m2_h +
                                  stage_gamma * step.stages[1].evaporation_kg_m2_h;
  bleed_kg_m2_h_ = bled / step_h;
  film_kg_m2_ = std::max(0.0, film_kg_m2_ + bled - mean_evaporation * step_h);
}

void ColumnRun::record() {
  ColumnHistory& h = solution_.history;
  h.time_s.push_back(time_s_);
  recorded_s_ = time_s_;
  record_profile();
  h.set_age_work_h.push_back(probes_.work.age_h);
  h.set_age_middle_h.push_back(probes_.middle.age_h);
  h.resistance_top_psi.push_back(resistance_psi(probes_.top.age_h, mix_.setting));
  h.resistance_work_psi.push_back(resistance_psi(probes_.work.age_h, mix_.setting));
  h.resistance_deep_psi.push_back(resistance_psi(probes_.deep.age_h, mix_.setting));
  h.resistance_middle_psi.push_back(resistance_psi(probes_.middle.age_h, mix_.setting));
  h.strength_psi.push_back(strength_psi(probes_.work.age_h, mix_.strength));
  h.evaporation_kg_m2_h.push_back(evaporation_kg_m2_h_);
  h.bleed_kg_m2_h.push_back(bleed_kg_m2_h_);
  h.film_kg_m2.push_back(film_kg_m2_);
}

void ColumnRun::record_profile() {
  ColumnHistory& h = solution_.history;
  h.surface_c.push_back(heat_.surface_c());
  h.middle_c.push_back(temperature_at(heat_, probes_.middle.place));
  h.mean_c.push_back(slab_mean_c());
  h.gradient_c.push_back(gradient_c());
}

double ColumnRun::slab_mean_c() const {
  double sum = 0.0;
  for (std::size_t i = 0; i < slab_cells_; ++i)
    sum += heat_.cells_c()[i] * heat_.grid().thickness_m[i];
  return sum / case_.thickness_m;
}

/// Top less bottom of the straight line with the slab's first moment about its middle.
double ColumnRun::gradient_c() const {
  double moment = 0.0;
  double straight = 0.0;  // moment of a line that falls by 1 over the thickness
  for (std::size_t i = 0; i < slab_cells_; ++i) {
    const double arm_m = 0.5 * case_.thickness_m - heat_.grid().depth_m[i];
    moment += heat_.cells_c()[i] * heat_.grid().thickness_m[i] * arm_m;
    straight += heat_.grid().thickness_m[i] * arm_m * arm_m / case_.thickness_m;
  }
  return moment / straight;
}

}  // namespace

ColumnSolution solve_column(const ColumnCase& column, const SiteWeather& weather,
                            const SolverSettings& settings) {
  return ColumnRun(column, weather, settings).run();
}

}  // namespace slabtide
