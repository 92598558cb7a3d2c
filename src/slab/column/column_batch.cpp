#include "slab/column/column_batch.h"

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
          &h.bleed_water_kg_m2};
}

}  // namespace

ColumnBatch::ColumnBatch(const SiteWeather& site_weather, const SolverSettings& solver)
    : weather(site_weather),
      settings(solver),
      end_s(solver.end_s > 0.0 ? solver.end_s : site_weather.grid.end_s()),
      air(thin_air(site_weather.air_pressure_pa)) {
  shared.reserve(weather.grid.count);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    shared.push_back({weather.air_c[i], weather.vapour_pressure_pa[i], weather.wind_slab_m_s[i],
                      weather.sky_emissivity[i]});
  }
}

void ColumnWorkspace::clear_for(std::size_t numbers, std::size_t marks) {
  kept.clear();
  kept.reserve(marks);
  if (numbers <= room) return;
  rows = hwy::AllocateAligned<double>(numbers);
  room = numbers;
}

ColumnRecorder::ColumnRecorder(const ColumnBatch& batch, std::span<const ColumnCase* const> cases,
                               std::span<ColumnSolution> solutions, std::size_t lanes,
                               std::size_t kept_cells, ColumnWorkspace& workspace)
    : solutions_(solutions), lanes_(lanes), entries_(series_count + kept_cells), desk_(workspace) {
  const double shortest_s = std::min(batch.settings.early_step_s, batch.settings.late_step_s);
  const auto first = std::min_element(
      cases.begin(), cases.end(),
      [](const ColumnCase* a, const ColumnCase* b) { return a->placed_s < b->placed_s; });
  // Only the last step of each lane can be shorter than this.
  const auto max =
      static_cast<std::size_t>((batch.end_s - (*first)->placed_s) / shortest_s) + lanes + 2;
  desk_.clear_for(max * entries_ * lanes, max);
}

double* ColumnRecorder::next_row(const Lanes& kept) {
  unsigned bits = 0;
  for (std::size_t lane = 0; lane < lanes_; ++lane) {
    if (kept[lane] != 0.0) bits |= 1U << lane;
  }
  desk_.kept.push_back(static_cast<std::uint8_t>(bits));
  return desk_.rows.get() + (desk_.kept.size() - 1) * entries_ * lanes_;
}

void ColumnRecorder::put_energies(const Lanes& which, const Energies& energies) {
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    if (which[lane] == 0.0) continue;
    solutions_[lane].energy = {.surface_j_m2 = energies.surface_j_m2[lane],
                               .ground_j_m2 = energies.ground_j_m2[lane],
                               .source_j_m2 = energies.source_j_m2[lane],
                               .stored_j_m2 = energies.stored_j_m2[lane]};
  }
}

std::size_t ColumnRecorder::rows_kept_of(std::size_t lane) const {
  return static_cast<std::size_t>(
      std::count_if(desk_.kept.begin(), desk_.kept.end(),
                    [lane](unsigned bits) { return ((bits >> lane) & 1U) != 0; }));
}

void ColumnRecorder::copy_kept(std::size_t lane, std::size_t entry, double* to,
                               std::size_t apart) const {
  const double* from = desk_.rows.get() + entry * lanes_ + lane;
  for (const unsigned bits : desk_.kept) {
    if (((bits >> lane) & 1U) != 0) {
      *to = *from;
      to += apart;
    }
    from += entries_ * lanes_;
  }
}

void ColumnRecorder::finish() {
  const std::size_t cells = entries_ - series_count;
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    const std::size_t rows = rows_kept_of(lane);
    for (std::vector<double>* const series : series_of(solutions_[lane].history)) {
      series->resize(rows);
    }
    solutions_[lane].cells_c.resize(rows * cells);
  }
  // An entry after the other, since all lanes of it lie together in memory.
  for (std::size_t entry = 0; entry < entries_; ++entry) {
    for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
      ColumnSolution& solution = solutions_[lane];
      if (entry < series_count) {
        copy_kept(lane, entry, series_of(solution.history)[entry]->data(), 1);
      } else {
        copy_kept(lane, entry, solution.cells_c.data() + (entry - series_count), cells);
      }
    }
  }
}

}  // namespace slabtide
