#include "placing_sequence.h"

#include <algorithm>
#include <stdexcept>
#include <string_view>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/text.h"

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

std::vector<std::size_t> zones_in_order(const Job& job) {
  std::vector<std::size_t> order;
  for (const std::string& name : job.pour.placing_sequence) {
    const auto found = std::find_if(job.zones.begin(), job.zones.end(),
                                    [&name](const Zone& zone) { return zone.name == name; });
    if (found == job.zones.end()) throw std::invalid_argument("no zone named " + name);
    order.push_back(static_cast<std::size_t>(found - job.zones.begin()));
  }
  return order;
}

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

std::optional<PlacedTooEarly> placed_too_early(std::span<const std::string> order,
                                               std::span<const Zone> zones) {
  for (std::size_t i = 0; i < order.size(); ++i) {
    for (const Zone& zone : zones) {
      if (zone.name != order[i]) continue;
      for (const std::string& earlier : zone.after) {
        if (!holds(order.first(i), earlier)) return PlacedTooEarly{zone.name, earlier};
      }
    }
  }
  return std::nullopt;
}

std::vector<std::string> in_due_order(std::span<const std::string> order,
                                      std::span<const Zone> zones) {
  std::vector<std::string> left(order.begin(), order.end());
  std::vector<std::string> due;
  while (!left.empty()) {
    const auto next = std::find_if(left.begin(), left.end(), [&](const std::string& name) {
      due.push_back(name);
      const bool may_come = !placed_too_early(due, zones);
      due.pop_back();
      return may_come;
    });
    if (next == left.end()) return {};
    due.push_back(*next);
    left.erase(next);
  }
  return due;
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
