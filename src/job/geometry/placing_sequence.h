#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "slabtide/job/model/job.h"

namespace slabtide {

/// What is wrong with a name in a list of zones, and what to do about it.
struct ZoneNameFault {
  std::size_t at = 0;  ///< index in the list
  std::string message;
  std::string next_step;  ///< may be empty
};

/// Names that match no zone and names given twice, in the order of the list.
std::vector<ZoneNameFault> zone_name_faults(std::span<const std::string> names,
                                            std::span<const std::string> zones);

/// The zones as indices into job.zones, in the order they are placed.
/// Error: std::invalid_argument for a name that no zone has.
std::vector<std::size_t> zones_in_order(const Job& job);

/// Two zones of which one comes after the other (`Zone::after`) and is placed before it.
struct PlacedTooEarly {
  std::string zone;
  std::string after;
};
/// The first such pair in the order; empty if there is none.
std::optional<PlacedTooEarly> placed_too_early(std::span<const std::string> order,
                                               std::span<const Zone> zones);

/// The order with every zone behind those it comes after, and else as it was. Empty if zones come
/// after each other in a circle.
std::vector<std::string> in_due_order(std::span<const std::string> order,
                                      std::span<const Zone> zones);

/// The zones missing from `order`.
std::vector<std::string> zones_left_out(std::span<const std::string> order,
                                        std::span<const std::string> zones);

}  // namespace slabtide
