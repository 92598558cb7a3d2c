#include "bare_base.h"

#include <algorithm>
#include <cmath>

#include "core/parallel.h"
#include "exposure_table.h"
#include "pour_span.h"
#include "slab/column/column_solver.h"
#include "slab/material/materials.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

constexpr double base_step_s = 600.0;
/// Where no course is laid, the soil's own top.
constexpr double bare_soil_m = 0.1;
/// An insulated tarp, R-3: the least of the usual blankets (ours).
constexpr double tarp_m2k_w = m2k_w_from_r_us(3.0);

TimeGrid base_grid(const Job& job, const OrderPlan& order) {
  const Duration day = boost::posix_time::hours(24);
  TimeGrid grid;
  grid.start = midnight_before(job.pour.start, job.site.time_zone) - day;
  grid.step_s = base_step_s;
  const double end_s = seconds_between(grid.start, placing_span(order).last_placed);
  grid.count = static_cast<std::size_t>(std::ceil(end_s / base_step_s)) + 2;
  return grid;
}

/// What neither sets nor warms by itself.
MixModel inert(const ThermalMaterial& material) {
  MixModel mix;
  mix.setting = {.initial_set_h = 1.0, .final_set_h = 2.0};
  mix.hydration = {.tau_h = 1.0, .beta = 1.0};
  mix.concrete = material;
  return mix;
}

ColumnCase bare_case(const Zone& zone, double ground_c) {
  const BareSurface surface = bare_surface(zone.base);
  ColumnCase column;
  column.concrete_c = column.ground_c = ground_c;
  column.thickness_m = zone.base.depth_m > 0.0 ? zone.base.depth_m : bare_soil_m;
  column.absorptance = surface.absorptance;
  column.steady_wetness = surface.wetness;
  return column;
}

ThermalMaterial top_material(const Base& base) {
  return base.depth_m > 0.0 ? base_material(base.kind) : soil_material();
}

/// Value k of a row, between two rows.
double between(const std::vector<double>& rows, std::size_t width, std::size_t row, std::size_t k,
               double way) {
  const double before = rows[row * width + k];
  return before + way * (rows[(row + 1) * width + k] - before);
}

std::vector<GroundPoint> ground_at(const ColumnSolution& solution, double at_s) {
  const std::vector<double>& time_s = solution.history.time_s;
  const auto above = std::upper_bound(time_s.begin(), time_s.end() - 1, at_s);
  const auto row =
      static_cast<std::size_t>(std::max(above - time_s.begin(), std::ptrdiff_t{1})) - 1;
  const double way = std::clamp((at_s - time_s[row]) / (time_s[row + 1] - time_s[row]), 0.0, 1.0);
  const std::size_t depths = solution.profile_depth_m.size();
  std::vector<GroundPoint> ground{{0.0, between(solution.history.surface_c, 1, row, 0, way)}};
  for (std::size_t k = 0; k < depths; ++k) {
    ground.push_back(
        {solution.profile_depth_m[k], between(solution.profile_c, depths, row, k, way)});
  }
  return ground;
}

}  // namespace

BareBases::BareBases(const Job& job, const WeatherSeries& series, const OrderPlan& order,
                     UtcTime start, double ground_c, PourMemo& memo)
    : job_(job), memo_(memo), ground_c_(ground_c) {
  if (job.site.ground_c) return;
  weather_ = site_weather(job.site, series, base_grid(job, order));
  ahead_s_ = seconds_between(weather_.grid.start, start);
}

void BareBases::lay_under(std::size_t column, double placed_s, const Zone& zone,
                          std::size_t exposure, Point at) {
  if (job_.site.ground_c || !laid_.try_emplace(column, Laid{placed_s, {}}).second) return;
  const Base& base = zone.base;
  const Likeness likeness{base.kind, base.kept, base.depth_m, base.plastic, zone.shaded, exposure};
  const auto [found, is_new] = run_of_.try_emplace(likeness, places_.size());
  if (is_new) places_.push_back({&zone, at, {}});
  places_[found->second].columns.push_back(column);
}

CellExposure BareBases::exposure_of(const Place& place, const SunPath& path) const {
  if (place.zone->shaded || place.zone->base.kept == BaseKept::shaded)
    return expose_shaded(shaded_sky_view, weather_);
  return expose(*memo_.light.at(place.at, path), weather_);
}

BarePlace BareBases::bare(const Place& place) {
  return {place.zone->base, place.zone->shaded, place.at};
}

bool BareBases::is_known(const Place& place, const KeptGrounds& kept) {
  for (const std::size_t column : place.columns) {
    Laid& laid = laid_.at(column);
    auto ground = kept.at(bare(place), ahead_s_ + laid.placed_s);
    if (!ground) return false;
    laid.ground = std::move(*ground);
  }
  return true;
}

void BareBases::solve(const SolverSettings& settings) {
  if (places_.empty()) return;
  KeptGrounds* kept = memo_.grounds(weather_, ground_c_);
  std::vector<Place> places;
  for (const Place& place : places_) {
    if (kept == nullptr || !is_known(place, *kept)) places.push_back(place);
  }
  solve(places, kept, settings);
}

void BareBases::solve(const std::vector<Place>& places, KeptGrounds* kept,
                      const SolverSettings& settings) {
  const SunPath path(weather_);
  std::vector<CellExposure> exposures(places.size());
  in_parallel(places.size(), settings.threads,
              [&](std::size_t i) { exposures[i] = exposure_of(places[i], path); });
  std::vector<MixModel> materials;
  std::vector<ColumnCase> cases;
  for (const Place& place : places) {
    materials.push_back(inert(top_material(place.zone->base)));
    cases.push_back(bare_case(*place.zone, ground_c_));
    if (place.zone->base.kept == BaseKept::covered)
      cases.back().covers = {{0.0, weather_.grid.end_s(), tarp_m2k_w, true}};
  }
  for (std::size_t i = 0; i < cases.size(); ++i) {
    cases[i].exposure = &exposures[i];
    cases[i].mix = &materials[i];
  }
  SolverSettings coarse;
  coarse.early_step_s = coarse.late_step_s = base_step_s;
  coarse.threads = settings.threads;
  coarse.keep_profile = true;
  visit_columns(cases, weather_, coarse, [&](std::size_t i, const ColumnSolution& solution) {
    for (const std::size_t column : places[i].columns) {
      Laid& laid = laid_.at(column);  // of this place alone: no other thread has it
      const double placed_s = ahead_s_ + laid.placed_s;
      laid.ground = ground_at(solution, placed_s);
      if (kept != nullptr) kept->keep(bare(places[i]), placed_s, laid.ground);
    }
  });
}

std::vector<GroundPoint> BareBases::under(std::size_t column) const {
  const auto found = laid_.find(column);
  return found == laid_.end() ? std::vector<GroundPoint>() : found->second.ground;
}

}  // namespace slabtide
