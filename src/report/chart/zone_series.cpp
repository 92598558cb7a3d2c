#include "zone_series.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "core/rounded.h"
#include "slab/process/setting.h"
#include "slabtide/day/pour/cell_times.h"

namespace slabtide {

namespace {

constexpr double sample_s = 600.0;

/// The histories of a zone's cells, without duplicates.
std::set<std::size_t> histories_of(const ZoneRun& zone) {
  std::set<std::size_t> all;
  for (const CellRun& cell : zone.cells) all.insert(cell.history);
  return all;
}

}  // namespace

std::size_t middle_cell(const ZoneRun& zone, const PlannedPour& facts) {
  struct Set {
    double at_s;
    std::size_t cell;
  };
  std::vector<Set> sets;
  double area_m2 = 0.0;
  for (std::size_t i = 0; i < zone.cells.size(); ++i) {
    const ColumnHistory& history = facts.run.histories[zone.cells[i].history];
    const auto at_s = first_reaches(history.time_s, history.resistance_middle_psi, initial_set_psi);
    if (!at_s) continue;
    sets.push_back({*at_s, i});
    area_m2 += zone.cells[i].cell.area_m2;
  }
  std::stable_sort(sets.begin(), sets.end(),
                   [](const Set& a, const Set& b) { return rounded(a.at_s) < rounded(b.at_s); });
  double before_m2 = 0.0;
  for (const Set& set : sets) {
    before_m2 += zone.cells[set.cell].cell.area_m2;
    if (2.0 * before_m2 >= area_m2) return set.cell;
  }
  return 0;
}

std::vector<double> sample_times_s(double from_s, double to_s) {
  const auto steps = static_cast<int>(std::floor((to_s - from_s) / sample_s));
  std::vector<double> times;
  for (int k = 0; k <= steps; ++k) times.push_back(from_s + k * sample_s);
  return times;
}

Reader reader_of(std::vector<double> ColumnHistory::*record, double (*convert)(double)) {
  return [record, convert](const ColumnHistory& history, double at_s) {
    return convert(value_at(history.time_s, history.*record, at_s));
  };
}

ChartLine zone_line(std::size_t zone, const Reader& reader, double from_s, double to_s,
                    const PlannedPour& facts) {
  const ZoneRun& run = facts.run.zones[zone];
  const ColumnHistory& middle = facts.run.histories[run.cells[middle_cell(run, facts)].history];
  double placed_s = 0.0;
  for (const CellRun& cell : run.cells) placed_s = std::max(placed_s, cell.placed_s);
  const auto histories = histories_of(run);
  ChartLine line;
  line.name = facts.job.zones[zone].name;
  for (const double at_s : sample_times_s(from_s, to_s)) {
    if (at_s < placed_s) continue;
    line.points.push_back({at_s, reader(middle, at_s)});
    std::pair<double, double> band{line.points.back().value, line.points.back().value};
    for (const std::size_t history : histories) {
      const double value = reader(facts.run.histories[history], at_s);
      band = {std::min(band.first, value), std::max(band.second, value)};
    }
    line.band.push_back(band);
  }
  return line;
}

}  // namespace slabtide
