#include "slabtide/day/windows/touch.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "part_columns.h"
#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

constexpr double quarter_s = 900.0;
/// If a window does not close before the forecast ends, this much of it is shown (ours).
constexpr double max_shown_s = 12.0 * 3600.0;
/// A lower resistance counts as none; keeps the logarithm bounded.
constexpr double min_psi = 1e-3;

/// The time span in which a zone's touch is reported, in seconds from the grid's start.
struct Stretch {
  double from_s = 0.0;
  double to_s = 0.0;
};

std::optional<Stretch> working_stretch(const std::vector<TouchedPart>& parts, const PourRun& run) {
  std::optional<Stretch> stretch;
  for (const TouchedPart& part : parts) {
    const OperationWindow* window = part.plan->window(part.operation);
    if (window == nullptr || !window->opens) continue;
    const double from_s = seconds_between(run.weather.grid.start, *window->opens);
    const auto closes = window->closed_all_over ? window->closed_all_over : window->closes;
    const double to_s =
        closes ? seconds_between(run.weather.grid.start, *closes) : from_s + max_shown_s;
    if (!stretch) stretch = Stretch{from_s, to_s};
    stretch->from_s = std::min(stretch->from_s, from_s);
    stretch->to_s = std::max(stretch->to_s, to_s);
  }
  return stretch;
}

/// Seconds from a full quarter hour on the clock to the grid's start. Time zones differ from UTC by
/// whole quarter hours.
double past_quarter_s(const PourRun& run) {
  const auto seconds = run.weather.grid.start.time_of_day().total_seconds();
  return std::fmod(static_cast<double>(seconds), quarter_s);
}

std::vector<double> quarters_of(const Stretch& stretch, const PourRun& run) {
  const double past_s = past_quarter_s(run);
  const long first = std::lround(std::ceil((stretch.from_s + past_s) / quarter_s)) - 1;
  const long last = std::lround(std::ceil((stretch.to_s + past_s) / quarter_s));
  std::vector<double> quarters;
  for (long quarter = first; quarter <= last; ++quarter) {
    const double at_s = static_cast<double>(quarter) * quarter_s - past_s;
    if (at_s >= 0.0 && at_s <= run.weather.grid.end_s()) quarters.push_back(at_s);
  }
  return quarters;
}

/// The mean of the logarithms, by area.
double typical_psi(const std::vector<PartColumn>& columns, const PourRun& run, double at_s) {
  double logarithms = 0.0;
  double area_m2 = 0.0;
  for (const PartColumn& column : columns) {
    const ColumnHistory& history = run.histories[column.history];
    const double resistance_psi = value_at(history.time_s, history.resistance_work_psi, at_s);
    logarithms += column.area_m2 * std::log(std::max(min_psi, resistance_psi));
    area_m2 += column.area_m2;
  }
  return area_m2 > 0.0 ? std::exp(logarithms / area_m2) : 0.0;
}

}  // namespace

std::string_view touch_id(Touch touch) {
  constexpr std::array<std::string_view, 5> ids{"wait", "light", "full", "last_call", "gone"};
  return ids[static_cast<std::size_t>(touch)];
}

double typical_resistance_psi(const PartPlan& part, const ZoneRun& zone, const PourRun& run,
                              double at_s) {
  return typical_psi(columns_of(zone, part.cells), run, at_s);
}

Touch touch_at(double resistance_psi, bool opens, const ResistanceWindow& window,
               const TouchRules& rules) {
  if (resistance_psi >= window.closes_psi) return Touch::gone;
  if (!opens) return Touch::wait;
  if (resistance_psi >= rules.last_call_from_close_factor * window.closes_psi) {
    return Touch::last_call;
  }
  return resistance_psi < rules.full_from_opens_factor * window.opens_psi ? Touch::light
                                                                          : Touch::full;
}

std::vector<PartTouch> touch_of(const std::vector<TouchedPart>& parts, const ZoneRun& zone,
                                const PourRun& run, const Practice& practice) {
  const auto stretch = working_stretch(parts, run);
  if (!stretch) return {};
  const std::vector<double> quarters = quarters_of(*stretch, run);
  std::vector<PartTouch> touches;
  for (const TouchedPart& part : parts) {
    const OperationWindow* window = part.plan->window(part.operation);
    const std::vector<PartColumn> columns = columns_of(zone, part.plan->cells);
    PartTouch touch{part.plan->id, part.plan->name, part.operation, {}};
    for (const double at_s : quarters) {
      const UtcTime at = run.at(at_s);
      const double psi = typical_psi(columns, run, at_s);
      const bool opens = window != nullptr && window->opens && *window->opens <= at;
      touch.quarters.push_back(
          {at, psi, touch_at(psi, opens, practice.window(part.operation), practice.crew.touch)});
    }
    touches.push_back(std::move(touch));
  }
  return touches;
}

}  // namespace slabtide
