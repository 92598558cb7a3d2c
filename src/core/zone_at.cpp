#include "zone_at.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string_view>
#include <vector>

namespace slabtide {

// Built from data/time_zones, whose files tools/time-zones writes.
namespace embedded {
std::string_view time_zones_names_txt();
std::string_view time_zones_tree_txt();
}  // namespace embedded

namespace {

std::vector<std::string_view> zone_names() {
  std::vector<std::string_view> names;
  std::string_view rest = embedded::time_zones_names_txt();
  while (!rest.empty()) {
    const std::string_view line = rest.substr(0, rest.find('\n'));
    rest.remove_prefix(std::min(rest.size(), line.size() + 1));
    if (!line.starts_with('#')) names.push_back(line);
  }
  return names;
}

// The tree is a string of codes, two characters each. The first 48 by 24 are the world, row by row
// from the north-west; then come nodes of four codes, a cell's quarters in the same order. The
// highest codes are zones; a lower one says how many nodes farther on than its own its cell is
// quartered (a cell of the world counts as node -1).
constexpr int world_columns = 48;
constexpr int world_rows = 24;
constexpr int quarters = 4;
constexpr char zero_symbol = '#';
constexpr int symbols = 56;
constexpr int codes = symbols * symbols;

int code_at(std::size_t index) {
  const std::string_view pair = embedded::time_zones_tree_txt().substr(2 * index, 2);
  return (pair[0] - zero_symbol) * symbols + (pair[1] - zero_symbol);
}

// A shade over the whole, as the table's makers divide by it: the far edge belongs to the last
// cell.
constexpr double around_deg = 360.00000000000006;
constexpr double pole_to_pole_deg = 180.00000000000003;

/// The same position in quarters of its cell, from 0 to 2.
double within_cell(double position) { return 2.0 * (position - std::floor(position)); }

}  // namespace

std::string zone_name_at(double latitude_deg, double longitude_deg) {
  if (!(std::abs(latitude_deg) <= 90.0 && std::abs(longitude_deg) <= 180.0))
    throw std::invalid_argument("zone_name_at: no such place");
  const std::vector<std::string_view> names = zone_names();
  const int first_zone = codes - static_cast<int>(names.size());
  double x = world_columns * (180.0 + longitude_deg) / around_deg;
  double y = world_rows * (90.0 - latitude_deg) / pole_to_pole_deg;
  int code = code_at(static_cast<std::size_t>(y) * world_columns + static_cast<std::size_t>(x));
  int node = -1;
  while (code < first_zone) {
    node += code + 1;
    x = within_cell(x);
    y = within_cell(y);
    const int index = world_columns * world_rows + quarters * node + 2 * static_cast<int>(y) +
                      static_cast<int>(x);
    code = code_at(static_cast<std::size_t>(index));
  }
  return std::string(names[static_cast<std::size_t>(code - first_zone)]);
}

}  // namespace slabtide
