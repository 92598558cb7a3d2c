#include "slabtide/job/geometry/placing_sequence.h"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "slabtide/core/text.h"

namespace slabtide {

namespace {

bool holds(std::span<const std::string> names, const std::string& name) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::string meant_words(const std::string& name, std::span<const std::string> zones) {
  const std::vector<std::string_view> candidates(zones.begin(), zones.end());
  const auto meant = nearest(name, candidates);
  return meant ? fmt::format("did you mean \"{}\"?", *meant)
               : fmt::format("the zones are {}", fmt::join(zones, ", "));
}

}  // namespace

std::vector<ZoneNameFault> zone_name_faults(std::span<const std::string> names,
                                            std::span<const std::string> zones) {
  std::vector<ZoneNameFault> faults;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const std::string& name = names[i];
    if (!holds(zones, name)) {
      faults.push_back({i, fmt::format("there is no zone \"{}\"", name), meant_words(name, zones)});
    } else if (holds(names.first(i), name)) {
      faults.push_back({i, fmt::format("names the zone \"{}\" twice", name), {}});
    }
  }
  return faults;
}

std::vector<std::string> zones_left_out(std::span<const std::string> order,
                                        std::span<const std::string> zones) {
  std::vector<std::string> left_out;
  for (const std::string& zone : zones) {
    if (!holds(order, zone)) left_out.push_back(zone);
  }
  return left_out;
}

}  // namespace slabtide
