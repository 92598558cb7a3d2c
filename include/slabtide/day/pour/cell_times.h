#pragma once

#include <optional>
#include <span>
#include <vector>

#include "slabtide/day/practice/practice.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// Where a rising curve first reaches `level`: seconds, interpolated in the logarithm of
/// the values (log resistance runs nearly straight). Empty where it never does.
std::optional<double> first_reaches(std::span<const double> time_s, std::span<const double> values,
                                    double level);

/// The value at an instant between two entries, straight between them; the nearest end
/// outside.
double value_at(std::span<const double> time_s, std::span<const double> values, double at_s);

/// When the sheen has gone from a column.
struct SheenGone {
  double at_s = 0.0;
  /// Share of the bleed water still to come then.
  double bleed_left = 0.0;
  double evaporation_kg_m2_h = 0.0;
};

/// The first time the free water is under the limit and not growing, after it had stood
/// above the limit, or after the grace time where it never did; no later than initial set.
/// Empty where neither comes.
std::optional<SheenGone> sheen_gone(const ColumnHistory& history, const Practice& practice);

/// When no more water rises; empty where the bleeding outlasts the history.
std::optional<double> bleeding_ends(const ColumnHistory& history);

/// One operation in one column, seconds from the grid's start.
struct CellWindow {
  std::optional<double> opens_s;
  std::optional<double> closes_s;
  /// It opens with water still standing: the bleeding is over, and what is left is to be
  /// dragged off first.
  bool water_stands = false;
  bool stiff_before_dry = false;  ///< too stiff before the bleeding was over: no window at all
};

/// Opens with the resistance and, where the operation asks for it, not before the sheen is
/// gone or the bleeding over, whichever is first: water that stands when no more rises can
/// be dragged off, water that still rises must not be worked in (ours, after the trade).
CellWindow cell_window(const ColumnHistory& history, const ResistanceWindow& window,
                       const Practice& practice);

/// When a column can be walked on: past final set and strong enough.
std::optional<double> foot_traffic_opens_s(const ColumnHistory& history, const SetRules& set);
/// When release agent and slurry can be washed off: old enough, and past what walking asks for.
std::optional<double> wash_opens_s(const ColumnHistory& history, const SetRules& set);
/// When it can be sealed: dried after the wash, in daylight, with the surface within the
/// sealer's range and no rain falling. `weather` is what the column was solved under.
std::optional<double> seal_opens_s(const ColumnHistory& history, const SiteWeather& weather,
                                   const Practice& practice);

/// A time and the area it holds for.
struct TimedArea {
  std::optional<double> at_s;
  double area_m2 = 0.0;
};

/// The time by which `fraction` of the area has come; empty where that never happens.
std::optional<double> time_of_fraction(std::vector<TimedArea> areas, double fraction);

}  // namespace slabtide
