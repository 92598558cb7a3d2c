#include "slab/column/column_batch.h"

#include <algorithm>

#include "slab/column/cell_weather-inl.h"
#include "slab/column/column_steps.h"

namespace slabtide {

namespace formula = HWY_NAMESPACE;

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

ColumnBatch::ColumnBatch(const SiteWeather& site_weather, const SolverSettings& solver,
                         std::span<const ColumnCase* const> cases, const SharedModes* known)
    : weather(site_weather),
      settings(solver),
      end_s(solver.end_s > 0.0 ? solver.end_s : site_weather.grid.end_s()),
      air(thin_air(site_weather.air_pressure_pa)),
      known_(known) {
  shared.reserve(weather.grid.count);
  for (std::size_t i = 0; i < weather.grid.count; ++i) {
    const double wind_m_s = weather.wind_slab_m_s[i];
    shared.push_back({weather.air_c[i], weather.vapour_pressure_pa[i],
                      formula::wind_convection_w_m2k(wind_m_s, air),
                      formula::menzel_coefficient_kg_m2_h_pa(wind_m_s, air.still_evaporation),
                      weather.sky_emissivity[i]});
  }
  for (const ColumnCase* each : cases) {
    if (known_ == nullptr || known_->find(*each, settings) == nullptr)
      worked_out_.add(*each, settings);
  }
}

const ColumnModes& ColumnBatch::modes_of(const ColumnCase& column) const {
  const ColumnModes* const known = known_ == nullptr ? nullptr : known_->find(column, settings);
  return known == nullptr ? *worked_out_.find(column, settings) : *known;
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
                               std::size_t profile_depths, ColumnWorkspace& workspace)
    : cases_(cases),
      solutions_(solutions),
      lanes_(lanes),
      entries_(series_count + profile_depths),
      desk_(workspace) {
  const double shortest_s = std::min(batch.settings.early_step_s, batch.settings.late_step_s);
  const auto first = std::min_element(
      cases.begin(), cases.end(),
      [](const ColumnCase* a, const ColumnCase* b) { return a->placed_s < b->placed_s; });
  std::size_t cut_short = 1;  // of a lane's steps: the last, and those that end at a change
  for (const ColumnCase* each : cases)
    cut_short = std::max(cut_short, changes_at_set_ages + 2 * each->covers.size() + 1);
  // So are the first steps, and some after final set until they have grown.
  constexpr std::size_t growing = first_steps + 4;
  const auto max = static_cast<std::size_t>((batch.end_s - (*first)->placed_s) / shortest_s) +
                   lanes * (cut_short + growing) + 2;
  desk_.clear_for(max * entries_ * lanes, max);
}

double* ColumnRecorder::next_row(const Lanes& kept) {
  unsigned bits = 0;
  for (std::size_t lane = 0; lane < lanes_; ++lane) {
    if (kept[lane] != 0.0) bits |= 1U << lane;
  }
  desk_.kept.push_back(static_cast<std::uint16_t>(bits));
  return desk_.rows.get() + (desk_.kept.size() - 1) * entries_ * lanes_;
}

void ColumnRecorder::put_energies(const Lanes& which, const Energies& energies) {
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    if (which[lane] == 0.0) continue;
    solutions_[lane].energy = {.surface_j_m2 = energies.surface_j_m2[lane],
                               .source_j_m2 = energies.source_j_m2[lane],
                               .stored_j_m2 = energies.stored_j_m2[lane]};
  }
}

void ColumnRecorder::find_kept(std::size_t lane) {
  desk_.offsets.clear();
  for (std::size_t row = 0; row < desk_.kept.size(); ++row) {
    if (((desk_.kept[row] >> lane) & 1U) != 0)
      desk_.offsets.push_back(row * entries_ * lanes_ + lane);
  }
}

void ColumnRecorder::copy_kept(std::size_t entry, double* to, std::size_t apart) const {
  const double* const from = desk_.rows.get() + entry * lanes_;
  for (const std::size_t offset : desk_.offsets) {
    *to = from[offset];
    to += apart;
  }
}

void ColumnRecorder::finish() {
  const std::size_t depths = entries_ - series_count;
  for (std::size_t lane = 0; lane < solutions_.size(); ++lane) {
    ColumnSolution& solution = solutions_[lane];
    find_kept(lane);
    const std::size_t rows = desk_.offsets.size();
    const auto series = series_of(solution.history);
    for (std::size_t entry = 0; entry < series_count; ++entry) {
      series[entry]->resize(rows);
      copy_kept(entry, series[entry]->data(), 1);
    }
    for (double& at_s : solution.history.time_s) at_s += cases_[lane]->placed_s;
    solution.profile_c.resize(rows * depths);
    for (std::size_t i = 0; i < depths; ++i)
      copy_kept(series_count + i, solution.profile_c.data() + i, depths);
  }
}

}  // namespace slabtide
