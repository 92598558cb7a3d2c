#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "slabtide/core/time_zone.h"

namespace slabtide {

/// The IANA zone whose principal place is nearest, from zone1970.tab in the system's time-zone
/// files. Near a border this can be an hour off, so tell the user it is a guess. Empty if the table
/// is missing.
std::optional<std::string> nearest_zone_name(
    double latitude_deg, double longitude_deg,
    const std::filesystem::path& zoneinfo_dir = TimeZone::default_zoneinfo_dir());

}  // namespace slabtide
