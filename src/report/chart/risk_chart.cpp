#include "risk_chart.h"

#include <algorithm>
#include <limits>

#include "day/geometry/corners.h"
#include "report/markup/palette.h"
#include "slabtide/core/units.h"
#include "slabtide/day/pour/cell_times.h"
#include "slabtide/slab/stress/stress.h"
#include "zone_series.h"

namespace slabtide {

namespace {

/// The chart starts this long before the first final set (ours).
constexpr double before_set_s = seconds_per_hour;
/// The chart ends this long after the start of the pour, past the night (ours).
constexpr double night_over_s = 26.0 * seconds_per_hour;
constexpr double min_high = 1.0;
constexpr double max_high = 2.0;

StressCase uncut(std::size_t zone, const PlannedPour& facts) {
  const Zone& described = facts.job.zones[zone];
  return {facts.plan.zones[zone].uncut_length_m, described.thickness_m, described.tied,
          !re_entrant_corners(described.outline).empty()};
}

/// The cell whose stress reaches the limit when the first fraction of the area has reached it (as
/// practice says); if that never happens, the cell with the highest stress.
const CellRun& telling_cell(std::size_t zone, const PlannedPour& facts) {
  const ZoneRun& run = facts.run.zones[zone];
  const StressCase piece = uncut(zone, facts);
  std::vector<TimedArea> areas;
  for (const CellRun& cell : run.cells) {
    areas.push_back({stress_reaches_s(facts.run.histories[cell.history], facts.run.mixes[cell.mix],
                                      piece, facts.practice.saw.cut_by_ratio),
                     cell.cell.area_m2});
  }
  const auto first_s = time_of_fraction(areas, facts.practice.cells.first_fraction);
  for (std::size_t i = 0; first_s && i < run.cells.size(); ++i) {
    if (areas[i].at_s == first_s) return run.cells[i];
  }
  const auto max = [&](const CellRun& cell) {
    const auto ratio =
        stress_ratio(facts.run.histories[cell.history], facts.run.mixes[cell.mix], piece);
    return *std::max_element(ratio.begin(), ratio.end());
  };
  std::size_t found = 0;
  double found_ratio = -1.0;
  for (std::size_t i = 0; i < run.cells.size(); ++i) {
    const double ratio = max(run.cells[i]);
    if (ratio > found_ratio) found = i;
    found_ratio = std::max(found_ratio, ratio);
  }
  return run.cells[found];
}

ChartLine line_of(std::size_t zone, double from_s, double to_s, const PlannedPour& facts) {
  const CellRun& cell = telling_cell(zone, facts);
  const ColumnHistory& history = facts.run.histories[cell.history];
  const MixModel& mix = facts.run.mixes[cell.mix];
  const auto ratio = stress_ratio(history, mix, uncut(zone, facts));
  std::vector<double> times_s = sample_times_s(from_s, to_s);
  // Add the exact time of the limit, which may be between two samples.
  const auto limit_s =
      stress_reaches_s(history, mix, uncut(zone, facts), facts.practice.saw.cut_by_ratio);
  if (limit_s && *limit_s > from_s && *limit_s < to_s) {
    times_s.insert(std::upper_bound(times_s.begin(), times_s.end(), *limit_s), *limit_s);
  }
  ChartLine line;
  line.name = facts.job.zones[zone].name;
  for (const double at_s : times_s) {
    line.points.push_back({at_s, value_at(history.time_s, ratio, at_s)});
  }
  return line;
}

std::optional<double> seconds_of(const std::optional<UtcTime>& time, const PlannedPour& facts) {
  if (!time) return std::nullopt;
  return seconds_between(facts.run.weather.grid.start, *time);
}

/// From when the first of the saws can start to the latest time; a stroke shows when the second
/// can.
ChartBar bar_of(std::size_t zone, const std::vector<SawKind>& kinds, const PlannedPour& facts) {
  ChartBar bar;
  bar.name = facts.job.zones[zone].name;
  for (const SawPlan& saw : facts.plan.zones[zone].saws) {
    if (std::find(kinds.begin(), kinds.end(), saw.kind) == kinds.end() || saw.too_late) continue;
    const auto opens_s = seconds_of(saw.opens, facts);
    (bar.from_s ? bar.mark_s : bar.from_s) = opens_s;
    bar.to_s = seconds_of(saw.latest, facts);
  }
  return bar;
}

double first_final_set_s(const PlannedPour& facts) {
  double first_s = std::numeric_limits<double>::infinity();
  for (const ZonePlan& zone : facts.plan.zones) {
    const UtcTime at = zone.whole.final_set.value_or(zone.placed.end);
    first_s = std::min(first_s, seconds_between(facts.run.weather.grid.start, at));
  }
  return first_s;
}

}  // namespace

LineChart risk_chart(const std::vector<std::size_t>& zones, const std::vector<SawKind>& kinds,
                     const PlannedPour& facts) {
  const SawRules& rules = facts.practice.saw;
  LineChart chart;
  chart.title = "Pull over strength of each zone left uncut, through the night";
  chart.from_s = first_final_set_s(facts) - before_set_s;
  chart.to_s = std::min(
      seconds_between(facts.run.weather.grid.start, facts.run.order.first_placed()) + night_over_s,
      facts.run.weather.grid.end_s());
  chart.to_s = std::max(chart.to_s, chart.from_s + seconds_per_hour);
  chart.levels = {{rules.cut_by_ratio, "cut by then"}, {rules.late_ratio, "late"}};
  double largest = min_high;
  for (std::size_t i = 0; i < zones.size(); ++i) {
    chart.lines.push_back(line_of(zones[i], chart.from_s, chart.to_s, facts));
    chart.lines.back().style = line_class(i);
    for (const ChartPoint& point : chart.lines.back().points) {
      largest = std::max(largest, point.value);
    }
    chart.bars.push_back(bar_of(zones[i], kinds, facts));
    chart.bars.back().style = line_class(i);
  }
  chart.high = std::min(largest, max_high);
  return chart;
}

}  // namespace slabtide
