#include "column_solver.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <utility>

#include <fmt/format.h>

#include "core/parallel.h"
#include "slab/column/column_core.h"

namespace slabtide {
namespace {

/// Less than any refinement asks for; with less a column would take forever (ours).
constexpr double min_spacing_m = 1.0e-4;
constexpr double shortest_step_s = 0.01;

bool all_finite(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

void check_weather(const SiteWeather& weather) {
  if (weather.grid.count < 2 || !(weather.grid.step_s > 0.0))
    throw std::invalid_argument("columns: the weather grid has no span");
  for (const std::vector<double>* each : {&weather.air_c, &weather.vapour_pressure_pa,
                                          &weather.wind_slab_m_s, &weather.sky_emissivity}) {
    if (each->size() != weather.grid.count || !all_finite(*each))
      throw std::invalid_argument("columns: the weather lacks a value at an instant of its grid");
  }
}

void check_settings(const SolverSettings& settings, const SiteWeather& weather) {
  if (!(settings.early_step_s >= shortest_step_s && settings.late_step_s >= shortest_step_s))
    throw std::invalid_argument("columns: steps are not above 0, or too short to come to an end");
  if (!(settings.slab_spacing_m >= min_spacing_m && settings.ground_spacing_m >= min_spacing_m))
    throw std::invalid_argument("columns: points are not apart, or too close together");
  if (!(settings.end_s >= 0.0 && settings.end_s <= weather.grid.end_s()))
    throw std::invalid_argument("columns: the end lies outside the weather grid");
  if (settings.threads < 0) throw std::invalid_argument("columns: threads below 0");
}

double end_s(const SolverSettings& settings, const SiteWeather& weather) {
  return settings.end_s > 0.0 ? settings.end_s : weather.grid.end_s();
}

bool is_layer(const Layer& layer) {
  return layer.thickness_m > 0.0 && layer.material.conductivity_w_mk > 0.0 &&
         layer.material.heat_capacity_j_m3k > 0.0;
}

/// Finite, each below the one before.
bool is_ground(const std::vector<GroundPoint>& ground) {
  for (std::size_t i = 0; i < ground.size(); ++i) {
    if (!(std::isfinite(ground[i].depth_m) && std::isfinite(ground[i].temperature_c))) return false;
    if (i > 0 && !(ground[i].depth_m > ground[i - 1].depth_m)) return false;
  }
  return true;
}

/// What is wrong with a case; null if nothing is.
const char* fault(const ColumnCase& c, const SiteWeather& weather, double end) {
  if (c.mix == nullptr || c.exposure == nullptr) return "no mix or no exposure";
  if (!(c.placed_s >= 0.0 && c.placed_s < end)) return "placed outside the time to solve";
  if (!(c.batched_s <= c.placed_s && std::isfinite(c.batched_s))) return "batched after placing";
  if (!(c.thickness_m > 0.0 && std::isfinite(c.thickness_m))) return "thickness is not above 0";
  if (!(std::isfinite(c.concrete_c) && std::isfinite(c.ground_c)))
    return "concrete or ground temperature is not finite";
  if (!is_ground(c.ground)) return "the temperatures below do not go down point by point";
  if (!(c.absorptance >= 0.0 && c.absorptance <= 1.0)) return "absorptance is not a share";
  if (!(c.convection_factor >= 0.0 && c.evaporation_factor >= 0.0)) return "a factor is below 0";
  if (!(c.bleed_time_factor > 0.0)) return "the factor on how long it bleeds is not above 0";
  if (c.exposure->shortwave_w_m2.size() != weather.grid.count ||
      !all_finite(c.exposure->shortwave_w_m2))
    return "the exposure lacks a value at an instant of the weather grid";
  if (!(c.exposure->sky_view >= 0.0 && c.exposure->sky_view <= 1.0))
    return "sky view is not a share";
  if (!std::all_of(c.below.begin(), c.below.end(), is_layer))
    return "a layer below has no thickness or no material";
  if (!(c.bleed_up_fraction >= 0.0 && c.bleed_up_fraction <= 1.0))
    return "what comes up of the bleed water is not a share";
  if (!(c.curing_cover_m2k_w >= 0.0) ||
      std::any_of(c.covers.begin(), c.covers.end(),
                  [](const CoverSpan& cover) { return !(cover.resistance_m2k_w >= 0.0); }))
    return "a cover's resistance is below 0";
  if (!(c.mix->setting.final_set_h > c.mix->setting.initial_set_h &&
        c.mix->setting.initial_set_h > 0.0))
    return "final set does not come after initial set";
  return nullptr;
}

void check_cases(std::span<const ColumnCase> cases, const SiteWeather& weather, double end) {
  for (std::size_t i = 0; i < cases.size(); ++i) {
    if (const char* what = fault(cases[i], weather, end))
      throw std::invalid_argument(fmt::format("column case {}: {}", i, what));
  }
}

void check(std::span<const ColumnCase> cases, const SiteWeather& weather,
           const SolverSettings& settings) {
  check_weather(weather);
  check_settings(settings, weather);
  check_cases(cases, weather, end_s(settings, weather));
}

/// What a thread needs besides the cases.
struct Workspace {
  ColumnWorkspace lanes;
  std::vector<ColumnSolution> solutions;
};

/// Calls `take(i, solution)` for every case i, from several threads.
template <class Take>
void solve_each(std::span<const ColumnCase> cases, const SiteWeather& weather,
                const SolverSettings& settings, const SharedModes* known, const Take& take) {
  const std::size_t lanes = lanes_at_once();
  std::vector<const ColumnCase*> pointers;
  for (const ColumnCase& each : cases) pointers.push_back(&each);
  const ColumnBatch batch(weather, settings, pointers, known);
  const auto solve = [&](std::size_t set, Workspace& workspace) {
    const std::size_t first = set * lanes;
    const std::size_t count = std::min(lanes, cases.size() - first);
    workspace.solutions.resize(lanes);
    solve_side_by_side(batch, std::span(pointers).subspan(first, count),
                       std::span(workspace.solutions).first(count), workspace.lanes);
    for (std::size_t i = 0; i < count; ++i) {
      ColumnSolution& solution = workspace.solutions[i];
      if (settings.keep_profile)
        solution.profile_depth_m = batch.modes_of(cases[first + i]).profile_depth_m;
      take(first + i, solution);
    }
  };
  in_parallel_at<Workspace>((cases.size() + lanes - 1) / lanes, settings.threads, solve);
}

}  // namespace

std::vector<ColumnHistory> solve_columns(std::span<const ColumnCase> cases,
                                         const SiteWeather& weather,
                                         const SolverSettings& settings) {
  check(cases, weather, settings);
  std::vector<ColumnHistory> histories(cases.size());
  solve_each(cases, weather, settings, nullptr,
             [&histories](std::size_t i, ColumnSolution& solution) {
               histories[i] = std::move(solution.history);
             });
  return histories;
}

void visit_columns(std::span<const ColumnCase> cases, const SiteWeather& weather,
                   const SolverSettings& settings, const VisitColumn& visit,
                   const SharedModes* known) {
  check(cases, weather, settings);
  solve_each(cases, weather, settings, known, visit);
}

}  // namespace slabtide
