#include "slabtide/slab/column.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstddef>
#include <exception>
#include <stdexcept>
#include <thread>

#include <fmt/format.h>

#include "slabtide/slab/column_solver.h"

namespace slabtide {
namespace {

constexpr int fewest_cells = 4;

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
  if (!(settings.early_step_s > 0.0 && settings.late_step_s > 0.0))
    throw std::invalid_argument("columns: steps are not above 0");
  if (settings.slab_cells < fewest_cells || settings.ground_cells < fewest_cells)
    throw std::invalid_argument("columns: too few cells");
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

/// What is wrong with a case; null where nothing is.
const char* fault(const ColumnCase& c, const SiteWeather& weather, double end) {
  if (c.mix == nullptr || c.exposure == nullptr) return "no mix or no exposure";
  if (!(c.placed_s >= 0.0 && c.placed_s < end)) return "placed outside the time to solve";
  if (!(c.batched_s <= c.placed_s && std::isfinite(c.batched_s))) return "batched after placing";
  if (!(c.thickness_m > 0.0 && std::isfinite(c.thickness_m))) return "thickness is not above 0";
  if (!(std::isfinite(c.concrete_c) && std::isfinite(c.ground_c)))
    return "concrete or ground temperature is not finite";
  if (!(c.absorptance >= 0.0 && c.absorptance <= 1.0)) return "absorptance is not a share";
  if (!(c.convection_factor >= 0.0 && c.evaporation_factor >= 0.0)) return "a factor is below 0";
  if (c.exposure->shortwave_w_m2.size() != weather.grid.count ||
      !all_finite(c.exposure->shortwave_w_m2))
    return "the exposure lacks a value at an instant of the weather grid";
  if (!(c.exposure->sky_view >= 0.0 && c.exposure->sky_view <= 1.0))
    return "sky view is not a share";
  if (!std::all_of(c.below.begin(), c.below.end(), is_layer))
    return "a layer below has no thickness or no material";
  if (std::any_of(c.covers.begin(), c.covers.end(),
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

std::size_t thread_count(const SolverSettings& settings, std::size_t cases) {
  const std::size_t wanted = settings.threads > 0 ? static_cast<std::size_t>(settings.threads)
                                                  : std::thread::hardware_concurrency();
  return std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(cases, 1));
}

/// Runs `solve(i)` for every i below `count`, each on whichever thread is free; the first
/// error stops the rest and is thrown here.
template <class Solve>
void for_each_case(std::size_t count, std::size_t threads, const Solve& solve) {
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> errors(threads);
  const auto work = [&](std::size_t thread) {
    try {
      for (std::size_t i = next++; i < count; i = next++) solve(i);
    } catch (...) {
      errors[thread] = std::current_exception();
      next = count;
    }
  };
  std::vector<std::thread> helpers;
  for (std::size_t i = 1; i < threads; ++i) helpers.emplace_back(work, i);
  work(0);
  for (std::thread& helper : helpers) helper.join();
  for (const std::exception_ptr& error : errors)
    if (error) std::rethrow_exception(error);
}

}  // namespace

std::vector<ColumnHistory> solve_columns(std::span<const ColumnCase> cases,
                                         const SiteWeather& weather,
                                         const SolverSettings& settings) {
  check_weather(weather);
  check_settings(settings, weather);
  check_cases(cases, weather, end_s(settings, weather));
  std::vector<ColumnHistory> histories(cases.size());
  for_each_case(cases.size(), thread_count(settings, cases.size()), [&](std::size_t i) {
    histories[i] = solve_column(cases[i], weather, settings).history;
  });
  return histories;
}

}  // namespace slabtide
