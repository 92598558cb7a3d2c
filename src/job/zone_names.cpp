#include "zone_names.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "slabtide/core/text.h"

namespace slabtide {

namespace {

std::string names_of(const std::vector<std::string>& zones) {
  return fmt::format("the zones are {}", fmt::join(zones, ", "));
}

}  // namespace

std::optional<std::vector<std::string>> read_zone_names(TableReader& table, std::string_view key,
                                                        const std::vector<std::string>& zones) {
  const std::vector<std::string_view> candidates(zones.begin(), zones.end());
  std::vector<std::string> names;
  bool faulty = false;
  for (const auto& [name, where] : table.texts(key)) {
    const bool known = std::find(zones.begin(), zones.end(), name) != zones.end();
    const bool again = std::find(names.begin(), names.end(), name) != names.end();
    if (!known) {
      const auto meant = nearest(name, candidates);
      table.error_at(where, key, fmt::format("there is no zone \"{}\"", name),
                     meant ? fmt::format("did you mean \"{}\"?", *meant) : names_of(zones));
    } else if (again) {
      table.error_at(where, key, fmt::format("names the zone \"{}\" twice", name));
    }
    faulty = faulty || !known || again;
    names.push_back(name);
  }
  if (faulty) return std::nullopt;
  return names;
}

std::vector<std::string> read_zone_order(TableReader& table,
                                         const std::vector<std::string>& zones) {
  const auto order = read_zone_names(table, "zone_order", zones);
  if (!order || !table.has("zone_order")) return {};
  for (const auto& zone : zones) {
    if (std::find(order->begin(), order->end(), zone) != order->end()) continue;
    table.error("zone_order", fmt::format("leaves out the zone \"{}\"", zone),
                "name every zone once, or leave zone_order out to place them as they are listed");
  }
  return *order;
}

}  // namespace slabtide
