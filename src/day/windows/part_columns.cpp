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

}  // namespace slabtide
