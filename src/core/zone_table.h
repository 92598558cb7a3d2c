#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "slabtide/core/time_zone.h"

namespace slabtide {

/// The IANA zone whose principal place lies nearest, from zone1970.tab in the system's
/// time-zone files: a guess that can be wrong by an hour near a border, so say it. Empty
/// where the table is not there.
std::optional<std::string> nearest_zone_name(
    double latitude_deg, double longitude_deg,
    const std::filesystem::path& zoneinfo_dir = TimeZone::default_zoneinfo_dir());

}  // namespace slabtide
