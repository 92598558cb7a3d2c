#pragma once

#include <span>

#include "packed_zones.h"

namespace slabtide {

/// All time zones, as pack_zones.cmake makes them of the system's when the planner is built.
std::span<const PackedZone> zone_pack();

}  // namespace slabtide
