#include "zone_names.h"

#include <fmt/format.h>

#include "job/geometry/placing_sequence.h"

namespace slabtide {

std::optional<std::vector<std::string>> read_zone_names(TableReader& table, std::string_view key,
                                                        const std::vector<std::string>& zones) {
  const auto texts = table.texts(key);
  std::vector<std::string> names;
  for (const auto& [name, where] : texts) names.push_back(name);
  const std::vector<ZoneNameFault> faults = zone_name_faults(names, zones);
  for (const ZoneNameFault& fault : faults) {
    table.error_at(texts[fault.at].second, key, fault.message, fault.next_step);
  }
  if (!faults.empty()) return std::nullopt;
  return names;
}

std::vector<std::string> read_placing_sequence(TableReader& table,
                                               const std::vector<std::string>& zones) {
  const auto order = read_zone_names(table, "zone_order", zones);
  if (!order || !table.has("zone_order")) return {};
  for (const std::string& zone : zones_left_out(*order, zones)) {
    table.error("zone_order", fmt::format("leaves out the zone \"{}\"", zone),
                "name every zone once, or leave zone_order out to place them as they are listed");
  }
  return *order;
}

}  // namespace slabtide
