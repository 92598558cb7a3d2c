#include "slabtide/day/saw_plan.h"

#include <algorithm>
#include <cmath>

#include "slabtide/day/cell_times.h"
#include "slabtide/slab/stress.h"

namespace slabtide {

namespace {

double wet_opens_psi(Aggregate aggregate, const SawRules& saw) {
  switch (aggregate) {
    case Aggregate::limestone:
      return saw.wet_opens_soft_psi;
    case Aggregate::granite:
    case Aggregate::quartzite:
    case Aggregate::basalt:  // as hard on a blade as granite: ours
      return saw.wet_opens_hard_psi;
    case Aggregate::unknown:
    case Aggregate::gravel:
    case Aggregate::sandstone:
      return saw.wet_opens_medium_psi;
  }
  return saw.wet_opens_medium_psi;
}

/// Hard enough to stand on, and strong enough that the blade does not ravel the edge.
std::optional<double> opens_s(const ColumnHistory& history, double strength_psi,
                              const Practice& practice) {
  const auto hard =
      first_reaches(history.time_s, history.resistance_middle_psi, practice.set.final_set_psi);
  const auto strong = first_reaches(history.time_s, history.strength_psi, strength_psi);
  if (!hard || !strong) return std::nullopt;
  return std::max(*hard, *strong);
}

/// Where the surface has fallen the trade's limit under its highest since initial set.
std::optional<double> surface_fallen_s(const ColumnHistory& history, const Practice& practice) {
  double peak_c = -1.0e9;
  for (std::size_t i = 0; i < history.time_s.size(); ++i) {
    if (history.resistance_middle_psi[i] < practice.set.initial_set_psi) continue;
    peak_c = std::max(peak_c, history.surface_c[i]);
    if (history.surface_c[i] <= peak_c - practice.saw.surface_fall_k) return history.time_s[i];
  }
  return std::nullopt;
}

/// The saw's times over the cells of a zone, by area.
struct SawAreas {
  std::vector<TimedArea> opens;
  std::vector<TimedArea> stress_limit;
  std::vector<TimedArea> stress_late;
  std::vector<TimedArea> surface_limit;
};

SawAreas saw_areas(const ZoneRun& zone_run, const PourRun& run, const StressCase& piece,
                   double strength_psi, const Practice& practice) {
  SawAreas areas;
  for (const CellRun& cell : zone_run.cells) {
    const ColumnHistory& history = run.histories[cell.history];
    const double area = cell.cell.area_m2;
    const std::vector<double> ratio = stress_ratio(history, run.mixes[cell.mix], piece);
    areas.opens.push_back({opens_s(history, strength_psi, practice), area});
    areas.stress_limit.push_back(
        {first_reaches(history.time_s, ratio, practice.saw.cut_by_ratio), area});
    areas.stress_late.push_back(
        {first_reaches(history.time_s, ratio, practice.saw.late_ratio), area});
    areas.surface_limit.push_back({surface_fallen_s(history, practice), area});
  }
  return areas;
}

std::optional<UtcTime> instant(const std::vector<TimedArea>& areas, double share,
                               const PourRun& run) {
  const auto at_s = time_of_share(areas, share);
  if (!at_s) return std::nullopt;
  return run.at(*at_s);
}

double turn(Point a, Point b, Point c) {
  return (b.x_m - a.x_m) * (c.y_m - b.y_m) - (b.y_m - a.y_m) * (c.x_m - b.x_m);
}

}  // namespace

double uncut_length_m(const Zone& zone) {
  if (zone.path) {
    double length = 0.0;
    for (std::size_t i = 1; i < zone.path->line.size(); ++i) {
      const Point& a = zone.path->line[i - 1];
      const Point& b = zone.path->line[i];
      length += std::hypot(b.x_m - a.x_m, b.y_m - a.y_m);
    }
    return length;
  }
  const auto [west, east] =
      std::minmax_element(zone.outline.begin(), zone.outline.end(),
                          [](const Point& a, const Point& b) { return a.x_m < b.x_m; });
  const auto [south, north] =
      std::minmax_element(zone.outline.begin(), zone.outline.end(),
                          [](const Point& a, const Point& b) { return a.y_m < b.y_m; });
  return std::max(east->x_m - west->x_m, north->y_m - south->y_m);
}

bool has_re_entrant_corner(const Zone& zone) {
  if (zone.path) return false;
  // Less than about five degrees is a bend, not a corner.
  constexpr double least_turn_share = 0.09;
  const std::size_t n = zone.outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Point& a = zone.outline[i];
    const Point& b = zone.outline[(i + 1) % n];
    const Point& c = zone.outline[(i + 2) % n];
    const double sides =
        std::hypot(b.x_m - a.x_m, b.y_m - a.y_m) * std::hypot(c.x_m - b.x_m, c.y_m - b.y_m);
    if (turn(a, b, c) < -least_turn_share * sides) return true;
  }
  return false;
}

SawPlan plan_saw(SawKind kind, const Zone& zone, const ZoneRun& zone_run, const Job& job,
                 const PourRun& run, const Practice& practice) {
  const SawRules& saw = practice.saw;
  const StressCase piece{uncut_length_m(zone), zone.thickness_m, zone.tied,
                         has_re_entrant_corner(zone)};
  const double strength_psi = kind == SawKind::early_entry ? saw.early_entry_opens_psi
                                                           : wet_opens_psi(job.mix.aggregate, saw);
  const SawAreas areas = saw_areas(zone_run, run, piece, strength_psi, practice);
  const double first = practice.cells.first_share;

  SawPlan plan;
  plan.kind = kind;
  plan.on_hand = std::find(job.pour.saws.begin(), job.pour.saws.end(), kind) != job.pour.saws.end();
  plan.opens = instant(areas.opens, first, run);
  plan.open_all_over = instant(areas.opens, practice.cells.all_over_share, run);
  plan.stress_limit = instant(areas.stress_limit, first, run);
  plan.stress_late = instant(areas.stress_late, first, run);
  plan.surface_limit = instant(areas.surface_limit, first, run);
  plan.surface_fall_k = saw.surface_fall_k;
  plan.latest = plan.stress_limit;
  if (plan.surface_limit && (!plan.latest || *plan.surface_limit < *plan.latest)) {
    plan.latest = plan.surface_limit;
  }
  plan.too_late = plan.latest && (!plan.opens || *plan.opens > *plan.latest);
  plan.depth_m = kind == SawKind::early_entry
                     ? saw.early_entry_depth_m
                     : std::max(saw.wet_least_depth_m, saw.wet_depth_share * zone.thickness_m);
  return plan;
}

}  // namespace slabtide
