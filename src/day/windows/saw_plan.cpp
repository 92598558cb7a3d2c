#include "slabtide/day/windows/saw_plan.h"

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <stdexcept>

#include "day/geometry/corners.h"
#include "job/geometry/zone_geometry.h"
#include "slab/process/setting.h"
#include "slabtide/day/geometry/panels.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/slab/stress/stress.h"

namespace slabtide {

namespace {

double wet_opens_psi(Aggregate aggregate, const SawRules& saw) {
  switch (aggregate) {
    case Aggregate::limestone:
      return saw.wet_opens_soft_psi;
    case Aggregate::granite:
    case Aggregate::basalt:  // as hard on a blade as granite: ours
      return saw.wet_opens_hard_psi;
    case Aggregate::quartzite:
      return saw.wet_opens_quartzite_psi;
    case Aggregate::unknown:
    case Aggregate::gravel:
    case Aggregate::sandstone:
      return saw.wet_opens_medium_psi;
  }
  return saw.wet_opens_medium_psi;
}

constexpr std::array saw_kinds{SawKind::early_entry, SawKind::wet};

/// The times of interest in a column, computed once for all cells that share it.
struct ColumnTimes {
  std::array<std::optional<double>, saw_kinds.size()> opens_s;
  std::optional<double> stress_limit_s;
  std::optional<double> stress_late_s;
  std::optional<double> surface_limit_s;
};

/// The saws' times over the cells of a zone, with their areas.
struct SawAreas {
  std::array<std::vector<TimedArea>, saw_kinds.size()> opens;
  std::vector<TimedArea> stress_limit;
  std::vector<TimedArea> stress_late;
  std::vector<TimedArea> surface_limit;
};

SawAreas saw_areas(const ZoneRun& zone_run, const PourRun& run, const StressCase& piece,
                   Aggregate aggregate, const Practice& practice) {
  const auto times_of = [&](const CellRun& cell) -> ColumnTimes {
    const ColumnHistory& history = run.histories[cell.history];
    const MixModel& mix = run.mixes[cell.mix];
    const auto stressed = stress_reaches_s(
        history, mix, piece, std::array{practice.saw.cut_by_ratio, practice.saw.late_ratio});
    ColumnTimes times{{}, stressed[0], stressed[1], surface_fallen_s(history, practice)};
    for (std::size_t i = 0; i < saw_kinds.size(); ++i) {
      times.opens_s[i] = saw_opens_s(saw_kinds[i], history, aggregate, practice);
    }
    return times;
  };
  std::map<std::size_t, ColumnTimes> columns;
  SawAreas areas;
  for (const CellRun& cell : zone_run.cells) {
    const auto [column, is_new] = columns.try_emplace(cell.history);
    if (is_new) column->second = times_of(cell);
    const ColumnTimes& times = column->second;
    for (std::size_t i = 0; i < saw_kinds.size(); ++i) {
      areas.opens[i].push_back({times.opens_s[i], cell.cell.area_m2});
    }
    areas.stress_limit.push_back({times.stress_limit_s, cell.cell.area_m2});
    areas.stress_late.push_back({times.stress_late_s, cell.cell.area_m2});
    areas.surface_limit.push_back({times.surface_limit_s, cell.cell.area_m2});
  }
  return areas;
}

std::optional<UtcTime> instant(const std::vector<TimedArea>& areas, double fraction,
                               const PourRun& run) {
  const auto at_s = time_of_fraction(areas, fraction);
  if (!at_s) return std::nullopt;
  return run.at(*at_s);
}

}  // namespace

std::optional<double> saw_opens_s(SawKind kind, const ColumnHistory& history, Aggregate aggregate,
                                  const Practice& practice) {
  const double strength_psi = kind == SawKind::early_entry ? practice.saw.early_entry_opens_psi
                                                           : wet_opens_psi(aggregate, practice.saw);
  const auto hard = first_reaches(history.time_s, history.resistance_middle_psi, final_set_psi);
  const auto strong = first_reaches(history.time_s, history.strength_psi, strength_psi);
  if (!hard || !strong) return std::nullopt;
  return std::max(*hard, *strong);
}

std::optional<double> surface_fallen_s(const ColumnHistory& history, const Practice& practice) {
  const auto set_s = first_reaches(history.time_s, history.resistance_middle_psi, initial_set_psi);
  if (!set_s) return std::nullopt;
  double peak_c = value_at(history.time_s, history.surface_c, *set_s);
  for (std::size_t i = 1; i < history.time_s.size(); ++i) {
    if (history.time_s[i] < *set_s) continue;
    peak_c = std::max(peak_c, history.surface_c[i]);
    const double fallen_c = peak_c - practice.saw.surface_fall_k;
    if (history.surface_c[i] > fallen_c) continue;
    // The peak was earlier, so the previous entry is above the limit.
    const double way =
        (history.surface_c[i - 1] - fallen_c) / (history.surface_c[i - 1] - history.surface_c[i]);
    return history.time_s[i - 1] + way * (history.time_s[i] - history.time_s[i - 1]);
  }
  return std::nullopt;
}

double saw_depth_m(SawKind kind, double thickness_m, const SawRules& saw) {
  if (kind == SawKind::early_entry) return saw.early_entry_depth_m;
  return std::max(saw.wet_min_depth_m, saw.wet_depth_fraction * thickness_m);
}

OperationWindow window_of(const SawPlan& saw) {
  OperationWindow window;
  window.operation = saw.kind == SawKind::early_entry ? Operation::saw_dry : Operation::saw_wet;
  window.opens = saw.opens;
  window.open_all_over = saw.open_all_over;
  window.closes = saw.latest;
  window.opens_band = saw.opens_band;
  window.closes_band = saw.latest_band;
  if (!saw.opens) {
    window.note = after_plan_words;
  } else if (saw.too_late) {
    window.note = "opens only when the cuts must be done";
  }
  note_standing_water(window, saw.sheen_gone);
  return window;
}

double uncut_length_m(const Zone& zone) {
  if (zone.path) return line_length_m(*zone.path);
  if (const auto fault = outline_fault(zone.outline)) {
    throw std::invalid_argument("the outline cannot be used: " + *fault);
  }
  return panel_of(zone.outline).length_m;
}

std::vector<SawPlan> plan_saws(const Zone& zone, const ZoneRun& zone_run, const Job& job,
                               const PourRun& run, const Practice& practice) {
  const SawRules& saw = practice.saw;
  const StressCase piece{uncut_length_m(zone), zone.thickness_m, zone.tied,
                         !re_entrant_corners(zone.outline).empty()};
  const SawAreas areas = saw_areas(zone_run, run, piece, job.mix.aggregate, practice);
  const double first = practice.cells.first_fraction;

  SawPlan either;
  either.stress_limit = instant(areas.stress_limit, first, run);
  either.stress_late = instant(areas.stress_late, first, run);
  either.surface_limit = instant(areas.surface_limit, first, run);
  either.surface_fall_k = saw.surface_fall_k;
  either.latest = either.stress_limit;
  if (either.surface_limit && (!either.latest || *either.surface_limit < *either.latest)) {
    either.latest = either.surface_limit;
  }
  std::vector<SawPlan> plans;
  for (std::size_t i = 0; i < saw_kinds.size(); ++i) {
    SawPlan& plan = plans.emplace_back(either);
    plan.kind = saw_kinds[i];
    plan.on_hand =
        std::find(job.pour.saws.begin(), job.pour.saws.end(), plan.kind) != job.pour.saws.end();
    plan.opens = instant(areas.opens[i], first, run);
    plan.open_all_over = instant(areas.opens[i], practice.cells.all_over_fraction, run);
    plan.too_late = plan.latest && (!plan.opens || *plan.opens > *plan.latest);
    plan.depth_m = saw_depth_m(plan.kind, zone.thickness_m, saw);
  }
  return plans;
}

}  // namespace slabtide
