#pragma once

#include <optional>
#include <span>
#include <vector>

#include "slabtide/day/practice/practice.h"
#include "slabtide/slab/column/column.h"
#include "slabtide/weather/site/site_weather.h"

namespace slabtide {

/// When a rising curve first reaches `level`, in seconds, interpolated in the logarithm of the
/// values (log resistance is almost linear). Empty if it never does.
std::optional<double> first_reaches(std::span<const double> time_s, std::span<const double> values,
                                    double level);

/// The value at an instant, interpolated linearly between two entries; outside them the nearest end
/// value.
double value_at(std::span<const double> time_s, std::span<const double> values, double at_s);

/// When the sheen has disappeared from a column.
struct SheenGone {
  double at_s = 0.0;
  /// Fraction of the bleed water still to come at that time.
  double bleed_left = 0.0;
  double evaporation_kg_m2_h = 0.0;
};

/// The first time at which the free water is below the limit and not growing, after it has been
/// above the limit or, if it never was, after the grace time; at the latest initial set. Empty if
/// none of these happens.
std::optional<SheenGone> sheen_gone(const ColumnHistory& history, const Practice& practice);

/// When no more water rises; empty if bleeding outlasts the history.
std::optional<double> bleeding_ends(const ColumnHistory& history);

/// What all work on a column has to wait for.
struct Bleeding {
  std::optional<SheenGone> sheen_gone;
  std::optional<double> ends_s;
};
Bleeding bleeding_of(const ColumnHistory& history, const Practice& practice);

/// The window of one operation in one column, in seconds from the grid's start.
struct CellWindow {
  std::optional<double> opens_s;
  std::optional<double> closes_s;
  /// It opens with water still on top: bleeding is over, and the rest must be dragged off first.
  bool water_stands = false;
  /// It opens over the last of the bleeding: it would be too stiff after it.
  bool still_bleeds = false;
  bool stiff_before_dry = false;  ///< too stiff before bleeding was over: no window at all
};

/// The window opens with the resistance; for operations that need it, not before the sheen has gone
/// or bleeding is over, whichever is first. Water left when no more rises can be dragged off, but
/// water that is still rising must not be worked in (ours, after the trade). Work that leaves the
/// top open (`ResistanceWindow::leaves_top_open`) and would come too late so is done before, once
/// little is left to come (SheenRules::early_bleed_fraction).
CellWindow cell_window(const ColumnHistory& history, const Bleeding& bleeding,
                       const ResistanceWindow& window, const Practice& practice);
/// The same, of a column that is asked for one window alone.
CellWindow cell_window(const ColumnHistory& history, const ResistanceWindow& window,
                       const Practice& practice);

/// When a column can be walked on: past final set and strong enough.
std::optional<double> foot_traffic_opens_s(const ColumnHistory& history, const SetRules& set);
/// The wash-off of exposed aggregate: from when the body bears feet and hoses, and the label's
/// hours, to the label's latest. Stones must not come loose, and the retarder must still hold the
/// paste back (common practice, no source). It may close before it opens.
CellWindow expose_window(const ColumnHistory& history, const SetRules& set);
/// When release agent and slurry can be washed off: old enough, by the clock as by its set, and
/// beyond what walking requires.
std::optional<double> wash_opens_s(const ColumnHistory& history, const SetRules& set);
/// When it can be sealed: dry after the wash, in daylight, with the surface in the sealer's
/// temperature range and no rain. `weather` is the weather that the column was solved with.
std::optional<double> seal_opens_s(const ColumnHistory& history, const SiteWeather& weather,
                                   const Practice& practice);

/// The surface of a column while it is too weak for frost.
struct YoungSurface {
  double min_c = 0.0;
  double coldest_s = 0.0;           ///< when it is that cold
  std::optional<double> freezes_s;  ///< when it first freezes; empty if it does not
};

/// Until the column has WeatherLimits::protect_until_psi, or to the end of its history.
YoungSurface young_surface(const ColumnHistory& history, const WeatherLimits& limits);

/// A time and the area it applies to.
struct TimedArea {
  std::optional<double> at_s;
  double area_m2 = 0.0;
};

/// The time by which `fraction` of the area has been reached; empty if that never happens.
std::optional<double> time_of_fraction(std::vector<TimedArea> areas, double fraction);

}  // namespace slabtide
