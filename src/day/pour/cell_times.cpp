#include "slabtide/day/pour/cell_times.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "slab/process/setting.h"
#include "slabtide/core/units.h"

namespace slabtide {

namespace {

/// How far `level` is from `a` to `b`, as a fraction; by logarithm if both are positive.
double way_to(double a, double b, double level) {
  if (a > 0.0 && b > a) return std::log(level / a) / std::log(b / a);
  return b > a ? (level - a) / (b - a) : 0.0;
}

/// The bleed water that comes between two entries in a row, the later of them `i`.
double bleed_before(const ColumnHistory& history, std::size_t i) {
  const double mean = 0.5 * (history.bleed_kg_m2_h[i] + history.bleed_kg_m2_h[i - 1]);
  return mean * (history.time_s[i] - history.time_s[i - 1]);
}

double bleed_after(const ColumnHistory& history, std::size_t from) {
  double water = 0.0;
  for (std::size_t i = from + 1; i < history.time_s.size(); ++i) water += bleed_before(history, i);
  return water;
}

double all_bleed(const ColumnHistory& history) { return bleed_after(history, 0); }

double bleed_fraction_after(const ColumnHistory& history, std::size_t from) {
  const double all = all_bleed(history);
  return all > 0.0 ? bleed_after(history, from) / all : 0.0;
}

/// When no more than `fraction` of the bleed water is still to come.
double bled_but_for_s(const ColumnHistory& history, double fraction) {
  double left = all_bleed(history);
  const double enough = fraction * left;
  std::size_t i = 0;
  while (left > enough && i + 1 < history.time_s.size()) left -= bleed_before(history, ++i);
  return history.time_s[i];
}

/// A window that would never open opens over the last of the bleeding, if that comes in time.
void open_while_bleeding(CellWindow& cell, const ColumnHistory& history, double resisting_s,
                         double bleed_fraction) {
  const double opens_s = std::max(resisting_s, bled_but_for_s(history, bleed_fraction));
  if (opens_s >= *cell.closes_s) return;
  cell.opens_s = opens_s;
  cell.stiff_before_dry = false;
  cell.water_stands = cell.still_bleeds = true;
}

}  // namespace

std::optional<double> first_reaches(std::span<const double> time_s, std::span<const double> values,
                                    double level) {
  const auto found =
      std::find_if(values.begin(), values.end(), [level](double value) { return value >= level; });
  if (found == values.end()) return std::nullopt;
  const auto i = static_cast<std::size_t>(found - values.begin());
  if (i == 0) return time_s[0];
  const double way = way_to(values[i - 1], values[i], level);
  return time_s[i - 1] + std::clamp(way, 0.0, 1.0) * (time_s[i] - time_s[i - 1]);
}

double value_at(std::span<const double> time_s, std::span<const double> values, double at_s) {
  const auto above = std::upper_bound(time_s.begin(), time_s.end(), at_s);
  if (above == time_s.begin()) return values.front();
  if (above == time_s.end()) return values.back();
  const auto i = static_cast<std::size_t>(above - time_s.begin());
  const double way = (at_s - time_s[i - 1]) / (time_s[i] - time_s[i - 1]);
  return values[i - 1] + way * (values[i] - values[i - 1]);
}

std::optional<SheenGone> sheen_gone(const ColumnHistory& history, const Practice& practice) {
  const double limit = practice.sheen.bleed_water_gone_kg_m2;
  const double grace_end_s = history.time_s.front() + practice.sheen.grace_min * seconds_per_minute;
  bool stood_above = false;
  for (std::size_t i = 0; i < history.time_s.size(); ++i) {
    const bool set = history.resistance_middle_psi[i] >= initial_set_psi;
    const bool thin = history.bleed_water_kg_m2[i] < limit;
    const bool thinning = history.bleed_kg_m2_h[i] <= history.evaporation_kg_m2_h[i];
    if (!thin) stood_above = true;
    const bool gone = thin && thinning && (stood_above || history.time_s[i] >= grace_end_s);
    if (set || gone) {
      return SheenGone{history.time_s[i], bleed_fraction_after(history, i),
                       history.evaporation_kg_m2_h[i]};
    }
  }
  return std::nullopt;
}

std::optional<double> bleeding_ends(const ColumnHistory& history) {
  const auto& bleed = history.bleed_kg_m2_h;
  const auto last =
      std::find_if(bleed.rbegin(), bleed.rend(), [](double rate) { return rate > 0.0; });
  if (last == bleed.rbegin()) return std::nullopt;
  return history.time_s[static_cast<std::size_t>(bleed.rend() - last)];
}

Bleeding bleeding_of(const ColumnHistory& history, const Practice& practice) {
  return {sheen_gone(history, practice), bleeding_ends(history)};
}

CellWindow cell_window(const ColumnHistory& history, const ResistanceWindow& window,
                       const Practice& practice) {
  return cell_window(history, bleeding_of(history, practice), window, practice);
}

CellWindow cell_window(const ColumnHistory& history, const Bleeding& bleeding,
                       const ResistanceWindow& window, const Practice& practice) {
  CellWindow cell;
  cell.opens_s = first_reaches(history.time_s, history.resistance_work_psi, window.opens_psi);
  cell.closes_s = first_reaches(history.time_s, history.resistance_work_psi, window.closes_psi);
  if (!window.needs_sheen_gone || !cell.opens_s) return cell;
  const auto& [dry, bled] = bleeding;
  if (!dry && !bled) {
    cell.opens_s.reset();
    return cell;
  }
  const double resisting_s = *cell.opens_s;
  const double never_s = history.time_s.back();
  cell.opens_s = std::max(resisting_s, std::min(dry ? dry->at_s : never_s, bled.value_or(never_s)));
  cell.water_stands = !dry || *cell.opens_s < dry->at_s;
  cell.stiff_before_dry = cell.closes_s && *cell.opens_s >= *cell.closes_s;
  if (cell.stiff_before_dry && window.leaves_top_open) {
    open_while_bleeding(cell, history, resisting_s, practice.sheen.early_bleed_fraction);
  }
  return cell;
}

std::optional<double> foot_traffic_opens_s(const ColumnHistory& history, const SetRules& set) {
  const auto hard = first_reaches(history.time_s, history.resistance_work_psi, final_set_psi);
  const auto strong =
      first_reaches(history.time_s, history.strength_psi, set.foot_traffic_strength_psi);
  if (!hard || !strong) return std::nullopt;
  return std::max(*hard, *strong);
}

CellWindow expose_window(const ColumnHistory& history, const SetRules& set) {
  CellWindow cell;
  const double placed_s = history.time_s.front();
  if (const auto bears = foot_traffic_opens_s(history, set)) {
    const double opens_s = std::max(*bears, placed_s + set.wash_off_after_h * seconds_per_hour);
    if (opens_s <= history.time_s.back()) cell.opens_s = opens_s;
  }
  cell.closes_s = placed_s + set.wash_off_before_h * seconds_per_hour;
  return cell;
}

std::optional<double> wash_opens_s(const ColumnHistory& history, const SetRules& set) {
  const auto old = first_reaches(history.time_s, history.set_age_work_h, set.wash_after_set_age_h);
  const auto bears = foot_traffic_opens_s(history, set);
  if (!old || !bears) return std::nullopt;
  const double waited_s = history.time_s.front() + set.wash_after_h * seconds_per_hour;
  const double opens_s = std::max({*old, *bears, waited_s});
  return opens_s <= history.time_s.back() ? std::optional(opens_s) : std::nullopt;
}

std::optional<double> seal_opens_s(const ColumnHistory& history, const SiteWeather& weather,
                                   const Practice& practice) {
  const auto washed_s = wash_opens_s(history, practice.set);
  if (!washed_s) return std::nullopt;
  const double dry_s = practice.set.dry_after_wash_h * seconds_per_hour;
  const double old_s =
      history.time_s.front() + practice.set.seal_after_days * hours_per_day * seconds_per_hour;
  const double step_s = weather.grid.step_s;
  double wet_until_s = *washed_s;
  for (auto k = static_cast<std::size_t>(std::ceil(*washed_s / step_s)); k < weather.grid.count;
       ++k) {
    const double at_s = step_s * static_cast<double>(k);
    if (at_s > history.time_s.back()) break;
    const double surface_c = value_at(history.time_s, history.surface_c, at_s);
    const bool sweats = surface_c < weather.dew_point_c[k] + practice.set.seal_over_dew_point_k;
    if (sweats || weather.rain_mm_h[k] >= practice.limits.rain_mm_h) wet_until_s = at_s;
    if (!(weather.sun_elevation_deg[k] > 0.0) || at_s - wet_until_s < dry_s || at_s < old_s)
      continue;
    if (surface_c >= practice.set.seal_surface_min_c &&
        surface_c <= practice.set.seal_surface_max_c)
      return at_s;
  }
  return std::nullopt;
}

YoungSurface young_surface(const ColumnHistory& history, const WeatherLimits& limits) {
  constexpr double frost_c = 0.0;
  YoungSurface young;
  young.min_c = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < history.time_s.size(); ++i) {
    if (history.strength_psi[i] >= limits.protect_until_psi) break;
    if (history.surface_c[i] < young.min_c) {
      young.min_c = history.surface_c[i];
      young.coldest_s = history.time_s[i];
    }
    if (!young.freezes_s && history.surface_c[i] <= frost_c) young.freezes_s = history.time_s[i];
  }
  return young;
}

std::optional<double> time_of_fraction(std::vector<TimedArea> areas, double fraction) {
  const auto when = [](const TimedArea& area) {
    return area.at_s.value_or(std::numeric_limits<double>::infinity());
  };
  std::sort(areas.begin(), areas.end(),
            [&when](const TimedArea& a, const TimedArea& b) { return when(a) < when(b); });
  const double whole_m2 =
      std::accumulate(areas.begin(), areas.end(), 0.0,
                      [](double sum, const TimedArea& area) { return sum + area.area_m2; });
  // Slightly below the fraction, so that nine cells of ten count as nine tenths.
  constexpr double rounding = 1e-9;
  double come_m2 = 0.0;
  for (const TimedArea& area : areas) {
    come_m2 += area.area_m2;
    if (come_m2 >= (fraction - rounding) * whole_m2) return area.at_s;
  }
  return std::nullopt;
}

}  // namespace slabtide
