#include "part_columns.h"

#include <unordered_map>

namespace slabtide {

std::vector<PartColumn> columns_of(const ZoneRun& zone, const std::vector<std::size_t>& cells) {
  std::vector<PartColumn> columns;
  std::unordered_map<std::size_t, std::size_t> place_of;
  for (const std::size_t i : cells) {
    const CellRun& cell = zone.cells[i];
    const auto [place, is_new] = place_of.try_emplace(cell.history, columns.size());
    if (is_new) columns.push_back({cell.history, 0.0});
    columns[place->second].area_m2 += cell.cell.area_m2;
  }
  return columns;
}

bool stiff_when_placed(const std::vector<PartColumn>& columns, const PourRun& run,
                       const ResistanceWindow& window, const CellRules& rules) {
  double stiff_m2 = 0.0;
  double all_m2 = 0.0;
  for (const PartColumn& column : columns) {
    const ColumnHistory& history = run.histories[column.history];
    all_m2 += column.area_m2;
    if (history.resistance_work_psi.front() >= window.closes_psi) stiff_m2 += column.area_m2;
  }
  constexpr double rounding = 1e-9;  // as in time_of_fraction
  return stiff_m2 > 0.0 && stiff_m2 >= (rules.first_fraction - rounding) * all_m2;
}

}  // namespace slabtide
