#include "slab/column_batch.h"

#include <algorithm>

namespace slabtide {
namespace {

std::array<std::vector<double>*, series_count> series_of(ColumnHistory& h) {
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

}  // namespace

ColumnBatch::ColumnBatch(const SiteWeather& site_weather, const SolverSettings& solver)
    : weather(site_weather),
      settings(solver),
      end_s(solver.end_s > 0.0 ? solver.end_s : site_weather.grid.end_s()) {
  shared.reserve(weather.grid.count);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    shared.push_back({weather.air_c[i], weather.vapour_pressure_pa[i], weather.wind_slab_m_s[i],
                      weather.sky_emissivity[i]});
  }
}

/// Room for the shortest steps throughout, so that the time loop never allocates.
ColumnRecorder::ColumnRecorder(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                               std::span<ColumnSolution> solutions)
    : solutions_(solutions) {
  const SolverSettings& settings = batch.settings;
  const double shortest_s =
      std::min(std::max(settings.early_step_s, record_every_s), settings.late_step_s);
  for (std::size_t i = 0; i < cases.size(); ++i) {
    const auto most =
        static_cast<std::size_t>((batch.end_s - cases[i]->placed_s) / shortest_s) + 4;
    for (std::vector<double>* each : series_of(solutions[i].history)) each->reserve(most);
  }
}

void ColumnRecorder::put(const Lanes& which, const double* values, std::size_t lanes) {
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    if (which[lane] == 0.0) continue;
    const double* next = values + lane;
    for (std::vector<double>* each : series_of(solutions_[lane].history)) {
      each->push_back(*next);
      next += lanes;
    }
  }
}

void ColumnRecorder::put_energy(const Lanes& which, const Energies& energies) {
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    if (which[lane] == 0.0) continue;
    solutions_[lane].energy = {.surface_j_m2 = energies.surface_j_m2[lane],
                               .ground_j_m2 = energies.ground_j_m2[lane],
                               .source_j_m2 = energies.source_j_m2[lane],
                               .stored_j_m2 = energies.stored_j_m2[lane]};
    for (std::vector<double>* each : series_of(solutions_[lane].history)) each->shrink_to_fit();
  }
}

}  // namespace slabtide
